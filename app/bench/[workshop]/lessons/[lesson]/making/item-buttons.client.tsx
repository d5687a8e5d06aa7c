'use client';
/** Buttons that every item of an ordered list has, and where the keyboard stands after them. */
import styles from './making.module.css';

export interface ItemButtonsProps {
  /** Names the item for who does not see it: `placement 2 of the repeat`. */
  readonly name: string;
  readonly index: number;
  readonly count: number;
  readonly onMove?: (by: -1 | 1) => void;
  readonly onDuplicate?: () => void;
  /** Called with where focus should go: an element's id. */
  readonly onRemove: () => void;
}

export function ItemButtons({ name, index, count, onMove, onDuplicate, onRemove }: ItemButtonsProps) {
  const move = (by: -1 | 1) => (event: { readonly currentTarget: HTMLButtonElement }) => {
    const button = event.currentTarget;
    if (index + by < 0 || index + by >= count) return;
    onMove?.(by);
    // The browser drops focus from an element that is moved; the key would be pressed into nowhere.
    requestAnimationFrame(() => button.focus());
  };
  return (
    <div className={styles.itemButtons}>
      {onMove && (
        <>
          <button type="button" className="bare" aria-disabled={index === 0} onClick={move(-1)}>
            <span aria-hidden="true">↑</span>
            <span className="unseen">Move {name} up</span>
          </button>
          <button type="button" className="bare" aria-disabled={index === count - 1} onClick={move(1)}>
            <span aria-hidden="true">↓</span>
            <span className="unseen">Move {name} down</span>
          </button>
        </>
      )}
      {onDuplicate && (
        <button type="button" className="bare" onClick={onDuplicate}>
          Duplicate<span className="unseen"> {name}</span>
        </button>
      )}
      <button type="button" className="bare" onClick={onRemove}>
        Take out<span className="unseen"> {name}</span>
      </button>
    </div>
  );
}
