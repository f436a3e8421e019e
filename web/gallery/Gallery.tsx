/** Every joint, shape and maker: the list of all, or one of them. */
import { useEffect, type ReactNode } from 'react';
import { Entry } from './Entry.tsx';
import { List } from './List.tsx';
import './gallery.css';

export function Gallery({ entry }: { entry: string | null }): ReactNode {
  useEffect(() => {
    scrollTo(0, 0);
  }, [entry]);
  return entry === null ? <List /> : <Entry key={entry} id={entry} />;
}
