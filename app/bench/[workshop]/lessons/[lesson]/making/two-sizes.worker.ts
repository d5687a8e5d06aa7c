/** Works out, away from the screen, which ways of mixing two sizes exist; tells each answer as it is found. */
import {
  ALTERNATION_NAMES,
  type Alternation,
  type AtWire,
  atWire,
  type TwoSizes,
  thickestWire,
} from '#lib/weave/space/alternations.ts';

export interface TwoSizesAsked {
  readonly weave: string;
  /** mm. */
  readonly inner: TwoSizes;
  /** By rising thickness, mm. */
  readonly wires: readonly number[];
}

export type TwoSizesTold =
  | { readonly kind: 'at'; readonly alternation: Alternation; readonly found: AtWire }
  | { readonly kind: 'thickest'; readonly alternation: Alternation; readonly wire: number }
  | { readonly kind: 'done' };

const tell = (told: TwoSizesTold): void => self.postMessage(told);

self.onmessage = ({ data }: MessageEvent<TwoSizesAsked>) => {
  const { weave, inner, wires } = data;
  const goes = new Map<Alternation, number>();
  const not = new Map<Alternation, AtWire>();
  for (const wire of wires)
    for (const alternation of ALTERNATION_NAMES) {
      // A ring lies wholly inside one of thicker wire and the same inner diameter: where it does not fit, that one never does.
      const thinner = not.get(alternation);
      const found = thinner ? { ...thinner, wire } : atWire(weave, alternation, inner, wire);
      tell({ kind: 'at', alternation, found });
      if (found.state === 'exists') goes.set(alternation, wire);
      else if (!thinner) not.set(alternation, found);
    }
  for (const alternation of ALTERNATION_NAMES) {
    const [from, to] = [goes.get(alternation), not.get(alternation)?.wire];
    if (from !== undefined && to !== undefined && from < to)
      tell({ kind: 'thickest', alternation, wire: thickestWire(weave, alternation, inner, [from, to]) });
  }
  tell({ kind: 'done' });
};
