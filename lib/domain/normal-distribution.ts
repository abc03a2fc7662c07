/**
 * The standard normal distribution, for suggestions alone: what comes of it is shown and typed in by a person, never
 * summed, so that doubles will do. The series is that of Marsaglia, Journal of Statistical Software 11 (2004), 4
 * (from memory).
 */

/** Beyond these the series says nothing that a suggestion could use. */
const FURTHEST = 8;

const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** The share of cases at or below `z` standard deviations. */
export function normalShare(z: number): number {
  if (z <= -FURTHEST) return 0;
  if (z >= FURTHEST) return 1;
  let [sum, term] = [z, z];
  for (let odd = 3; sum + term !== sum; odd += 2) {
    term *= (z * z) / odd;
    sum += term;
  }
  return 1 / 2 + density(z) * sum;
}

/** How many standard deviations hold a share of cases below them; the share above 0 and below 1. */
export function normalQuantile(share: number): number {
  let [low, high] = [-FURTHEST, FURTHEST];
  for (let middle = 0; low < middle || middle < high; middle = (low + high) / 2) {
    if (normalShare(middle) < share) low = middle;
    else high = middle;
    if ((low + high) / 2 === low || (low + high) / 2 === high) break;
  }
  return (low + high) / 2;
}

/** How much is lacking on average beyond `z` standard deviations, in standard deviations (the unit normal loss). */
export const normalLoss = (z: number): number => density(z) - z * (1 - normalShare(z));
