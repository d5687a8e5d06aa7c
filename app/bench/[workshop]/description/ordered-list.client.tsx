'use client';
/** A list whose order the teacher decides, by buttons that keep the focus on the thing they move. */
import { type ReactNode, useEffect, useRef } from 'react';
import styles from './description-setup.module.css';

interface OrderedListProps<T> {
  readonly label: string;
  readonly items: readonly T[];
  readonly keyOf: (item: T) => string;
  /** What the thing is called, for the buttons. */
  readonly nameOf: (item: T) => string;
  readonly onOrder: (items: readonly T[]) => void;
  readonly children: (item: T) => ReactNode;
}

export function OrderedList<T>(props: OrderedListProps<T>) {
  const { label, items, keyOf, nameOf, onOrder, children } = props;
  const list = useRef<HTMLOListElement>(null);
  const moved = useRef<{ key: string; by: 'up' | 'down' } | null>(null);

  useEffect(() => {
    if (moved.current === null || items.length === 0) return;
    const { key, by } = moved.current;
    moved.current = null;
    const row = list.current?.querySelector(`[data-key="${CSS.escape(key)}"]`);
    const wanted = row?.querySelector<HTMLButtonElement>(`[data-by="${by}"]:not(:disabled)`);
    (wanted ?? row?.querySelector<HTMLButtonElement>('button:not(:disabled)'))?.focus();
  }, [items]);

  const move = (index: number, by: 'up' | 'down'): void => {
    const item = items[index];
    if (item === undefined) return;
    moved.current = { key: keyOf(item), by };
    onOrder(items.toSpliced(index, 1).toSpliced(by === 'up' ? index - 1 : index + 1, 0, item));
  };

  return (
    <ol ref={list} className={styles['ordered']} aria-label={label}>
      {items.map((item, index) => (
        <li key={keyOf(item)} data-key={keyOf(item)}>
          <div className={styles['thing']}>{children(item)}</div>
          <span className={styles['moves']}>
            <button
              type="button"
              className="quiet"
              data-by="up"
              disabled={index === 0}
              aria-label={`${nameOf(item)}: earlier`}
              onClick={() => move(index, 'up')}
            >
              ↑
            </button>
            <button
              type="button"
              className="quiet"
              data-by="down"
              disabled={index === items.length - 1}
              aria-label={`${nameOf(item)}: later`}
              onClick={() => move(index, 'down')}
            >
              ↓
            </button>
          </span>
        </li>
      ))}
    </ol>
  );
}
