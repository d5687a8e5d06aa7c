'use client';
/** What follows from a ring kind's sizes and metal, each with its working, and whether the piece asks too much of it. */
import { bandWords, figure, fitFaultWords, ringMassSource } from '#app/words/ring-words.ts';
import { bandFinding, fitFault, fitNeed, roundInside } from '#lib/rings/fit.ts';
import { type MassUnit, massOf, ringsPer, sizesOf } from '#lib/rings/ring.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import { fitsOf } from '#lib/weave/fit-sequence.ts';
import { usualBandOf } from '#lib/weave/usual-bands.ts';
import { useDraft } from '../draft.client.tsx';
import styles from './making.module.css';

const MASS_UNITS: readonly (readonly [MassUnit, string])[] = [
  ['g', 'In a gram'],
  ['oz', 'In an ounce'],
  ['ozt', 'In a troy ounce'],
  ['lb', 'In a pound'],
];

export function RingFacts({ kind }: { kind: RingKind }) {
  const { content } = useDraft();
  const sizes = sizesOf(kind);
  const mass = massOf(kind);
  const fits = fitsOf(content, content.ringKinds).filter((fit) => fit.ringKind === kind.id);
  const broken = fits.filter((fit) => fit.fault);
  const tightest = fits.toSorted((a, b) => b.wires - a.wires)[0];
  const usual = usualBandOf(content.weave, content.otherNames);
  const inRepeat = content.repeat.some(
    (p) => p.opened === kind.id || p.carries.some((c) => c.ringKind === kind.id),
  );
  const finding = usual && inRepeat ? bandFinding(sizes.aspectRatio, usual.band) : 'usual';
  const need = tightest ? fitNeed(tightest.wiresMm) : null;
  const thinnestMm = Math.min(...content.ringKinds.map((each) => each.wire.mm), kind.wire.mm);
  const clasp = inRepeat || !tightest ? null : claspFit(sizes.innerMm, [...tightest.wiresMm, kind.wire.mm]);
  const [id, wd, mean] = [figure(sizes.innerMm, 4), figure(sizes.wireMm, 4), figure(sizes.meanMm, 4)];
  return (
    <>
      <dl className={styles.facts}>
        <Fact name="Aspect ratio" value={figure(sizes.aspectRatio, 2)}>
          {id} ÷ {wd}
          {sizes.innerFrom === 'measured' && ', measured'}
        </Fact>
        <Fact name="Outer diameter" value={`${figure(sizes.outerMm, 2)} mm`} />
        {mass ? (
          <Fact name="Mass" value={`${mass.from === 'metal' ? 'about ' : ''}${figure(mass.g, 4)} g`}>
            {ringMassSource(mass)}
          </Fact>
        ) : (
          <Fact name="Mass" value="not known">
            give the density of the metal, or weigh a hundred
          </Fact>
        )}
      </dl>
      <details className={styles.more}>
        <summary>
          All figures<span className="unseen"> of {kind.name || 'this ring'}</span>
        </summary>
        <dl className={styles.facts}>
          <Fact name="Outer diameter" value={`${figure(sizes.outerMm, 3)} mm`}>
            {id} + 2 × {wd}
          </Fact>
          <Fact name="Mean diameter" value={`${figure(sizes.meanMm, 3)} mm`}>
            {id} + {wd}, across the middle of the wire
          </Fact>
          <Fact name="Wire in a ring" value={`${figure(sizes.wireLengthMm, 2)} mm`}>
            π × {mean}
          </Fact>
          <Fact name="Volume" value={`${figure(sizes.volumeMm3, 2)} mm³`}>
            π² ÷ 4 × {wd}² × {mean}
          </Fact>
          {mass &&
            MASS_UNITS.map(([unit, name]) => (
              <Fact key={unit} name={name} value={`${figure(ringsPer(unit, mass.g), 2)} rings`} />
            ))}
          {tightest && (
            <Fact name="Through its hole" value={`${tightest.wires} wires`}>
              at the most, in {tightest.part} {tightest.number}
              {need && `; they need ${figure(need.needsMm, 2)} mm and have ${figure(sizes.innerMm, 2)} mm`}
            </Fact>
          )}
          <Fact name="Round its inside" value={`${roundInside(sizes.innerMm, thinnestMm)} wires`}>
            of {figure(thinnestMm, 4)} mm, side by side
          </Fact>
        </dl>
      </details>
      {clasp && (
        <p className={clasp.fits ? 'soft' : 'notice caution'}>
          As a clasp ring: with a loop of the same wire {clasp.need.wires} wires lie in it, which need{' '}
          {figure(clasp.need.needsMm, 2)} mm; it has {figure(sizes.innerMm, 2)} mm
          {clasp.fits ? '' : ', so take a wider ring or a thinner clasp'}.
        </p>
      )}
      {broken.map((fit) => (
        <p key={fit.placementId} className="fault">
          {fit.part}, placement {fit.number}: {fit.fault && fitFaultWords(fit.fault)}
        </p>
      ))}
      {usual && finding !== 'usual' && (
        <p className="notice caution">{bandWords(finding, sizes.aspectRatio, usual.weave, usual.band)}</p>
      )}
    </>
  );
}

/** For a ring that only the ends have: whether the loop of a clasp still finds room in it. */
function claspFit(innerMm: number, wiresMm: readonly number[]) {
  const need = fitNeed(wiresMm);
  return need && { need, fits: fitFault(innerMm, wiresMm) === null };
}

function Fact({ name, value, children }: { name: string; value: string; children?: React.ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <strong>{value}</strong> {children && <span className="soft">{children}</span>}
      </dd>
    </div>
  );
}
