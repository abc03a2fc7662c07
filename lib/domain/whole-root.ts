/** The largest whole number whose square is not above the value (Newton's method on whole numbers). */
export function rootDown(value: bigint): bigint {
  if (value < 2n) return value;
  let guess = 1n << BigInt((value.toString(2).length + 1) >> 1);
  for (;;) {
    const next = (guess + value / guess) >> 1n;
    if (next >= guess) return guess;
    guess = next;
  }
}
