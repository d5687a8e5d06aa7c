import type { Content } from '#lib/lesson/content.ts';
import { isTool, perWord, quantityWord } from '#lib/lesson/making-words.ts';
import styles from './lesson-page.module.css';

/** Everything that is no ring: used up or built in, then what stays on the bench. */
export const MaterialLists = ({ content }: { readonly content: Content }) => (
  <>
    <Items title="Other materials" items={content.materials.filter((item) => !isTool(item))} />
    <Items title="Tools" items={content.materials.filter(isTool)} />
  </>
);

const Items = ({ title, items }: { readonly title: string; readonly items: Content['materials'] }) =>
  items.length === 0 ? null : (
    <>
      <h3>{title}</h3>
      <ul className={styles.items}>
        {items.map((item) => (
          <li key={item.id}>
            <label className="tick">
              <input type="checkbox" data-tick={`item-${item.id}`} />
              <span>
                {item.name}, {quantityWord(item.quantityMilli, item.unit)} {perWord(item.per)}
                {item.note.trim() === '' ? null : <span className={styles.itemNote}>{item.note}</span>}
              </span>
            </label>
            {item.offer === null || item.offer.link === '' ? null : (
              <a href={item.offer.link} rel="nofollow noopener">
                where to get it
              </a>
            )}
          </li>
        ))}
      </ul>
    </>
  );
