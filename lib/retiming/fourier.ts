/** The fast Fourier transform (Cooley and Tukey 1965, radix 2), in place, for lengths that are powers of two. */

export interface Fourier {
  readonly length: number;
  /** Transforms `real` and `imaginary` in place. */
  transform(real: Float32Array, imaginary: Float32Array): void;
  /** Takes `transform` back, but for a factor of `length`. */
  inverse(real: Float32Array, imaginary: Float32Array): void;
}

/** @throws RangeError where `length` is no power of two. */
export function fourier(length: number): Fourier {
  if (length < 2 || (length & (length - 1)) !== 0) throw new RangeError(`${length} is no power of two`);
  const cosines = new Float32Array(length / 2);
  const sines = new Float32Array(length / 2);
  for (let k = 0; k < length / 2; k++) {
    cosines[k] = Math.cos((2 * Math.PI * k) / length);
    sines[k] = -Math.sin((2 * Math.PI * k) / length);
  }
  const places = new Uint32Array(length);
  const bits = Math.log2(length);
  for (let k = 0; k < length; k++) {
    let turned = 0;
    for (let bit = 0; bit < bits; bit++) if (k & (1 << bit)) turned |= 1 << (bits - 1 - bit);
    places[k] = turned;
  }

  const transform = (real: Float32Array, imaginary: Float32Array): void => {
    for (let k = 0; k < length; k++) {
      const place = places[k] as number;
      if (place > k) {
        const r = real[k] as number;
        const i = imaginary[k] as number;
        real[k] = real[place] as number;
        imaginary[k] = imaginary[place] as number;
        real[place] = r;
        imaginary[place] = i;
      }
    }
    for (let half = 1; half < length; half *= 2) {
      const stride = length / (2 * half);
      for (let start = 0; start < length; start += 2 * half) {
        for (let k = 0, turn = 0; k < half; k++, turn += stride) {
          const low = start + k;
          const high = low + half;
          const c = cosines[turn] as number;
          const s = sines[turn] as number;
          const hr = real[high] as number;
          const hi = imaginary[high] as number;
          const r = hr * c - hi * s;
          const i = hr * s + hi * c;
          const lr = real[low] as number;
          const li = imaginary[low] as number;
          real[high] = lr - r;
          imaginary[high] = li - i;
          real[low] = lr + r;
          imaginary[low] = li + i;
        }
      }
    }
  };
  return { length, transform, inverse: (real, imaginary) => transform(imaginary, real) };
}
