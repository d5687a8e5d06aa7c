'use client';
/** Everything that is no ring: tools, findings, consumables, with how much of it a piece takes. */
import { MATERIAL_KINDS, MATERIAL_PER, type Material, type MaterialKind } from '#lib/kit/making.ts';
import { useDraft } from '../draft.client.tsx';
import { ChoiceField } from './fields/choice-field.client.tsx';
import fieldStyles from './fields/fields.module.css';
import { NumberField } from './fields/number-field.client.tsx';
import { OfferFields } from './fields/offer-fields.client.tsx';
import { TextField } from './fields/text-field.client.tsx';
import { focusAdded } from './focus-added.ts';
import { ItemButtons } from './item-buttons.client.tsx';
import styles from './making.module.css';
import { type ListDeeds, useList } from './use-list.ts';

const PER = { lesson: 'for the whole piece', length: 'for each 100 mm', repeat: 'for each repeat' } as const;

const KIND_WORDS: Readonly<Record<MaterialKind, string>> = {
  tool: 'tool (kept)',
  finding: 'finding',
  consumable: 'consumable',
  safety: 'safety item (kept)',
  bead: 'bead',
  cord: 'cord or wire',
  other: 'something else',
};

const ADD_WORDS: Readonly<Record<MaterialKind, string>> = {
  tool: 'a tool',
  finding: 'a finding',
  consumable: 'a consumable',
  safety: 'a safety item',
  bead: 'beads',
  cord: 'cord or wire',
  other: 'something else',
};

export function Materials({ lessonId }: { lessonId: string }) {
  const materials = useList('materials', 'material');
  const { mayEdit } = useDraft();
  const add = (kind: MaterialKind) => {
    const id = crypto.randomUUID();
    materials.add({
      id,
      kind,
      name: '',
      quantityMilli: 1000,
      unit: kind === 'cord' ? 'm' : 'piece',
      // Beads are mostly strung again and again, cord runs along.
      per: kind === 'bead' ? 'repeat' : 'lesson',
      massG: null,
      offer: null,
      note: '',
    });
    focusAdded(`${id}-name`);
  };
  return (
    <>
      <ul className={styles.cards}>
        {materials.items.map((material, index) => (
          <MaterialCard
            key={material.id}
            material={material}
            index={index}
            lessonId={lessonId}
            list={materials}
          />
        ))}
      </ul>
      {mayEdit && (
        <div className="row">
          {(['tool', 'finding', 'bead', 'cord', 'consumable', 'safety', 'other'] as const).map((kind) => (
            <button key={kind} type="button" className="quiet" onClick={() => add(kind)}>
              Add {ADD_WORDS[kind]}
            </button>
          ))}
        </div>
      )}
    </>
  );
}

interface MaterialCardProps {
  readonly material: Material;
  readonly index: number;
  readonly lessonId: string;
  readonly list: ListDeeds<'materials'>;
}

function MaterialCard({ material, index, lessonId, list }: MaterialCardProps) {
  const { content } = useDraft();
  const place = `${lessonId}/${material.id}`;
  const called = material.name.trim() || `${material.kind} ${index + 1}`;
  const put = (part: Partial<Material>, what: string, run?: string) =>
    list.put({ ...material, ...part }, what, run);
  return (
    <li className={styles.card} id={material.id}>
      <div className={fieldStyles.grid}>
        <TextField
          id={`${material.id}-name`}
          label="What"
          value={material.name}
          onTake={(name, run) => put({ name }, 'name', run)}
        />
        <ChoiceField
          label="Kind"
          value={material.kind}
          choices={MATERIAL_KINDS.map((kind) => [kind, KIND_WORDS[kind]] as const)}
          onTake={(kind) => put({ kind }, 'kind')}
        />
        <NumberField
          id={`${material.id}-quantity`}
          label="How much"
          unit={material.unit}
          place={`${place}/quantity`}
          value={material.quantityMilli}
          places={3}
          least={0}
          most={1_000_000_000}
          onTake={(milli, run) => put({ quantityMilli: milli ?? 0 }, 'quantity', run)}
        />
        <ChoiceField
          label="Needed"
          value={material.per}
          choices={MATERIAL_PER.map((per) => [per, PER[per]] as const)}
          onTake={(per) => put({ per }, 'quantity')}
        />
      </div>
      <details className={styles.more}>
        <summary>Unit, price, link, note{material.offer ? ' (stated)' : ''}</summary>
        <div className={fieldStyles.grid}>
          <TextField
            label="Unit"
            maxLength={30}
            hint="piece, pair, m, g, drop. Pieces and pairs come whole."
            value={material.unit}
            onTake={(unit, run) => unit !== '' && put({ unit }, 'unit', run)}
          />
          <NumberField
            label="Mass of one unit"
            unit="g"
            place={`${place}/mass`}
            value={material.massG === null ? null : Math.round(material.massG * 1000)}
            places={3}
            least={1}
            most={100_000_000}
            mayBeEmpty
            onTake={(milli, run) => put({ massG: milli === null ? null : milli / 1000 }, 'mass', run)}
          />
        </div>
        <OfferFields
          place={place}
          linkId={`${material.id}-link`}
          offer={material.offer}
          currency={content.currency}
          unit={material.unit}
          onTake={(offer, run) => put({ offer }, 'how it is sold', run)}
        />
        <TextField
          label="Note"
          rows={2}
          value={material.note}
          onTake={(note, run) => put({ note }, 'note', run)}
        />
      </details>
      <ItemButtons
        name={called}
        index={index}
        count={list.items.length}
        onMove={(by) => list.move(material.id, by)}
        onDuplicate={() => list.add({ ...material, id: crypto.randomUUID() }, index + 1)}
        onRemove={() => list.remove(material.id)}
      />
    </li>
  );
}
