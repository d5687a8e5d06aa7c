/** One kit on the bench, and its files. */
import { KitHead } from '#app/kit/kit-head.tsx';
import { KitTables } from '#app/kit/kit-tables.tsx';
import { kitRows, preparationOf } from '#app/words/kit-rows.ts';
import { massWords } from '#app/words/kit-words.ts';
import { kitWorking } from '#app/words/kit-working.ts';
import type { KitList } from '#lib/kit/kit-list.ts';
import styles from './kit.module.css';

export interface OneKitProps {
  readonly kit: KitList;
  readonly caption: string;
  readonly files: string;
}

export const OneKit = ({ kit, caption, files }: OneKitProps) => {
  const { totals } = kit;
  const query = new URLSearchParams({ measure: `${kit.bodyMm} mm` });
  return (
    <div className={styles.kit}>
      <KitHead kit={kit} className={styles.sum} />
      <KitTables
        id="kit"
        rows={kitRows(kit)}
        rings={`Rings: ${caption}`}
        buying="Packs, mass and cost"
        working={kitWorking(kit)}
        tasks={preparationOf(kit)}
      />
      <dl className={styles.totals}>
        {totals.net > 0 && (
          <div>
            <dt>Rings in the finished piece, without spare</dt>
            <dd>{massWords(totals.ringsNetG)}</dd>
          </div>
        )}
        {totals.materialsG > 0 && totals.ringsNetG !== null && (
          <div>
            <dt>Finished, with materials that state a mass</dt>
            <dd>{massWords(totals.ringsNetG + totals.materialsG)}</dd>
          </div>
        )}
      </dl>
      <p className={styles.files}>
        <a href={`${files}/kit.pdf?${query}`}>Print sheet (PDF)</a>
        <a href={`${files}/kit.csv?${query}`}>Spreadsheet (CSV)</a>
        <a href={`${files}/kit.json?${query}`}>Data (JSON)</a>
      </p>
    </div>
  );
};
