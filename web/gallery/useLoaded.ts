import { useEffect, useState } from 'react';

/** What a promise gives; 'none' when it fails, null until then. Asked anew when `key` changes. */
export function useLoaded<T>(key: string, load: () => Promise<T>): T | 'none' | null {
  const [held, hold] = useState<{ readonly key: string; readonly value: T | 'none' } | null>(null);
  useEffect(() => {
    let wanted = true;
    load().then(
      (value) => wanted && hold({ key, value }),
      () => wanted && hold({ key, value: 'none' }),
    );
    return () => {
      wanted = false;
    };
    // oxlint-disable-next-line react/exhaustive-deps -- the key says what is loaded
  }, [key]);
  return held?.key === key ? held.value : null;
}
