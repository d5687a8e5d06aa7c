/** Pictures of rings, true to scale among themselves; the words beside them say the same. */
import { sizesOf } from '#lib/rings/ring.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import type { Placement } from '#lib/weave/placement.ts';

const DARK = '#25211b';

/** One ring seen from its front; `open` leaves its seam ajar at the top. */
function Ring({ kind, x, y, open }: { kind: RingKind; x: number; y: number; open?: boolean }) {
  const { meanMm, wireMm } = sizesOf(kind);
  const r = meanMm / 2;
  const gap = Math.min(0.6, (wireMm * 1.6) / r);
  const [dx, dy] = [r * Math.sin(gap), r * Math.cos(gap)];
  const d = open
    ? `M ${x + dx} ${y - dy} A ${r} ${r} 0 1 1 ${x - dx} ${y - dy}`
    : `M ${x} ${y - r} A ${r} ${r} 0 1 1 ${x - 0.001} ${y - r}`;
  return (
    <>
      <path d={d} fill="none" stroke={DARK} strokeWidth={wireMm * 1.25} />
      <path d={d} fill="none" stroke={kind.colourCode} strokeWidth={wireMm} />
    </>
  );
}

/** As large as it is beside the other kinds of the lesson. */
export function RingFigure({ kind, among }: { kind: RingKind; among: readonly RingKind[] }) {
  const half = Math.max(...[kind, ...among].map((each) => sizesOf(each).outerMm)) / 2 + 0.4;
  return (
    <svg viewBox={`${-half} ${-half} ${2 * half} ${2 * half}`} width="56" height="56" aria-hidden="true">
      <Ring kind={kind} x={0} y={0} />
    </svg>
  );
}

/**
 * A placement laid flat: the opened ring, closed rings hanging in it from
 * below, and one circle a passed ring above it. A cross in a passed ring: the
 * wire goes in from the front, away from the viewer; a dot: it comes towards
 * the viewer, from the back.
 */
export function PlacementFigure({ placement, kinds }: { placement: Placement; kinds: readonly RingKind[] }) {
  const find = (id: string | null): RingKind | undefined => kinds.find((kind) => kind.id === id);
  const opened = find(placement.opened);
  const carried = placement.carries.flatMap(({ ringKind, count }) => {
    const kind = find(ringKind);
    return kind ? Array<RingKind>(Math.min(count, 8)).fill(kind) : [];
  });
  // Nothing said yet: no picture, rather than an empty one.
  if (!opened && carried.length === 0 && placement.passes.length === 0) return null;
  const widest = Math.max(1, ...kinds.map((kind) => sizesOf(kind).outerMm));
  const step = widest * 0.8;
  const middle = (count: number, at: number): number => (at - (count - 1) / 2) * step;
  const columns = Math.max(1, carried.length, Math.min(placement.passes.length, 8));
  const width = (columns - 1) * step + widest * 1.2;
  const r = opened ? sizesOf(opened).meanMm / 2 : 0;
  const passes = placement.passes.slice(0, 8);
  const top = passes.length > 0 ? -r - widest * 0.85 : -r - widest * 0.2;
  const bottom = carried.length > 0 ? r + widest * 0.9 : r + widest * 0.2;
  return (
    <svg
      viewBox={`${-width / 2} ${top} ${width} ${bottom - top}`}
      width={Math.min(120, Math.max(64, columns * 34))}
      height="96"
      aria-hidden="true"
    >
      {passes.map((pass, at) => (
        <PassedRing
          // biome-ignore lint/suspicious/noArrayIndexKey: a pass is its place in the order
          key={at}
          from={pass.from}
          x={middle(passes.length, at)}
          y={-r - widest * 0.28}
          size={widest}
        />
      ))}
      {opened && <Ring kind={opened} x={0} y={0} open />}
      {carried.map((kind, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rings of one kind are alike
        <Ring key={at} kind={kind} x={middle(carried.length, at)} y={r + sizesOf(kind).innerMm * 0.32} />
      ))}
    </svg>
  );
}

function PassedRing({ from, x, y, size }: { from: 'front' | 'back'; x: number; y: number; size: number }) {
  const r = size * 0.36;
  const m = r * 0.34;
  return (
    <g stroke="#857a68" fill="none" strokeWidth={size * 0.06}>
      <circle cx={x} cy={y} r={r} strokeDasharray={`${size * 0.12} ${size * 0.07}`} />
      {from === 'front' ? (
        <path
          d={`M ${x - m} ${y - m} L ${x + m} ${y + m} M ${x + m} ${y - m} L ${x - m} ${y + m}`}
          stroke={DARK}
        />
      ) : (
        <circle cx={x} cy={y} r={m * 0.7} fill={DARK} stroke="none" />
      )}
    </g>
  );
}
