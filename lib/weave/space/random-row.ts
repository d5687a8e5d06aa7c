/** Numbers that look random and are the same on every machine, for searches whose answer must not change. */
export function randomRow(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    // A mixing of 32 bits by multiplication and shifts; no more is asked of it than to look even.
    state = (state + 0x9e37_79b9) >>> 0;
    let x = state;
    x = Math.imul(x ^ (x >>> 16), 0x21f0_aaad);
    x = Math.imul(x ^ (x >>> 15), 0x735a_2d97);
    return ((x ^ (x >>> 15)) >>> 0) / 4_294_967_296;
  };
}
