/** How long a proven basket takes, problems of several sizes, as the app solves them; and whether memory grows. */
import { leastBasket } from "@/lib/domain/buying/least-basket";
import { solvedBasket } from "@/lib/solver/solved-basket";
import { largeBasket } from "../helpers/large-baskets";
import { PROVEN_BASKETS } from "../helpers/proven-baskets";
import { problemOfInstance } from "../helpers/random-baskets";
import { line, median } from "./median-time";

const SIZES = [
  { materials: 40, suppliers: 5, offersEach: 5 },
  { materials: 150, suppliers: 5, offersEach: 5 },
  { materials: 150, suppliers: 12, offersEach: 4 },
] as const;
const PROBLEMS = 9;
const SECONDS = 20;
const SOLVES = 500;

export async function benchBaskets(): Promise<void> {
  for (const size of SIZES) {
    const problems = Array.from({ length: PROBLEMS }, (_, seed) => problemOfInstance(largeBasket({ ...size, seed })));
    await benchProblems(`${String(size.materials)} materials, ${String(size.suppliers)} suppliers, 3 prices`, problems);
  }
  await benchProblems(
    "twenty proven baskets, 10 and 40 materials",
    PROVEN_BASKETS.map(({ problem }) => problem),
  );
  const [first] = PROVEN_BASKETS;
  const grown = first && (await memoryGrown(first.problem));
  console.log(`${String(SOLVES)} solves of one problem: memory in use ${String(grown)} MB more after than before`);
}

async function benchProblems(what: string, problems: readonly Parameters<typeof solvedBasket>[0][]): Promise<void> {
  const times: number[] = [];
  const gaps: string[] = [];
  for (const problem of problems) {
    const began = performance.now();
    const { answer } = await solvedBasket(problem, { seconds: SECONDS });
    times.push(performance.now() - began);
    if (answer.kind === "basket" && answer.gap !== null)
      gaps.push(String((answer.gap * 10_000n) / answer.basket.total));
  }
  const slowest = Math.max(...times).toFixed(0);
  const open = gaps.length === 0 ? "all proven" : `${String(gaps.length)} open, gaps of ${gaps.join(", ")} in 10 000`;
  console.log(line(`basket, ${what}`, median(times), `slowest ${slowest} ms; ${open}`));
}

/** Megabytes, after the garbage was collected where the program may ask for it. */
async function memoryGrown(problem: Parameters<typeof leastBasket>[0]): Promise<number> {
  const inUse = () => {
    globalThis.gc?.();
    return process.memoryUsage().rss / 1e6;
  };
  for (let solve = 0; solve < SOLVES / 10; solve += 1) leastBasket(problem, { effort: 100_000 });
  await solvedBasket(problem, { seconds: SECONDS });
  const before = inUse();
  for (let solve = 0; solve < SOLVES; solve += 1) leastBasket(problem, { effort: 100_000 });
  return Math.floor(inUse() - before);
}
