import type { Content } from '#lib/lesson/content.ts';
import { isTool, perWord, quantityWord } from '#lib/lesson/making-words.ts';
import styles from './lesson-page.module.css';
import type { Explainer } from './terms.tsx';
import { WhatItIs } from './what-it-is.tsx';

interface MaterialListsProps {
  readonly content: Content;
  readonly explainer: Explainer;
}

/** Everything that is no ring: used up or built in, then what stays on the bench. */
export const MaterialLists = ({ content, explainer }: MaterialListsProps) => {
  const rest = content.materials.filter((item) => !isTool(item));
  return (
    <>
      <Items
        title={content.ringKinds.length === 0 ? 'Materials' : 'Other materials'}
        items={rest}
        explainer={explainer}
      />
      <Items title="Tools" items={content.materials.filter(isTool)} explainer={explainer} />
    </>
  );
};

interface ItemsProps {
  readonly title: string;
  readonly items: Content['materials'];
  readonly explainer: Explainer;
}

const Items = ({ title, items, explainer }: ItemsProps) =>
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
            <Explain name={item.name} explainer={explainer} />
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

const Explain = ({ name, explainer }: { readonly name: string; readonly explainer: Explainer }) => {
  const term = explainer.places(name)[0]?.term;
  return term === undefined ? null : <WhatItIs term={term} box={explainer.boxOf(term)} />;
};
