/** Documents in and out of files. The size is checked before a byte is read. */

/** The core's limit on a document as text (LIMITS.bytes of src/model/document.ts, which would bring the whole schema along). */
export const MOST_BYTES = 4 * 1024 * 1024;

export type Read = { readonly ok: true; readonly text: string; readonly name: string } | { readonly ok: false; readonly words: string };

export async function readFile(file: File): Promise<Read> {
  const name = shortName(file.name);
  if (file.size > MOST_BYTES)
    return {
      ok: false,
      words: `${name} holds ${(file.size / 1e6).toFixed(file.size < 1e7 ? 1 : 0)} MB; a piece is at most 4 MB of text. It was not read.`,
    };
  try {
    return { ok: true, text: await file.text(), name };
  } catch {
    return { ok: false, words: `${name} could not be read from the disk.` };
  }
}
const shortName = (name: string): string =>
  `“${[...name]
    .filter((c) => c >= ' ')
    .slice(0, 60)
    .join('')}”`;

/** Asks for a file; null when the maker thinks better of it. */
export function pickFile(): Promise<File | null> {
  return new Promise((done) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,application/json';
    input.addEventListener('change', () => done(input.files?.[0] ?? null));
    input.addEventListener('cancel', () => done(null));
    input.click();
  });
}

type Picker = (
  options: object,
) => Promise<{ createWritable: () => Promise<{ write: (b: Blob) => Promise<void>; close: () => Promise<void> }> }>;

/** Saves through the system's own dialog where there is one, else as a download. False when the maker turned it down. */
export async function saveFile(name: string, bytes: Blob): Promise<boolean> {
  const picker = (window as { showSaveFilePicker?: Picker }).showSaveFilePicker;
  if (picker && window.isSecureContext) {
    try {
      const out = await (await picker({ suggestedName: name })).createWritable();
      await out.write(bytes);
      await out.close();
      return true;
    } catch (e) {
      if (e instanceof DOMException && e.name === 'AbortError') return false;
      // Refused for another reason (a frame, a policy): the download below needs no permission.
    }
  }
  const url = URL.createObjectURL(bytes);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
  return true;
}
/** A title made safe as a file name. */
export const fileName = (title: string, ending: string): string =>
  `${
    title
      .toLowerCase()
      .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
      .replaceAll(/^-+|-+$/g, '')
      .slice(0, 60) || 'piece'
  }${ending}`;
