import type { ReactNode } from "react";
import { Sign } from "@/app/_ui/sign";
import { Was } from "@/app/_ui/was";
import type { BenchDay } from "@/lib/domain/bench-hours";
import { compare, type Fraction, minus, roundedDown, times, whole, ZERO } from "@/lib/domain/fraction";
import { minutesShown } from "@/lib/edge/figures";

/** What a day's runs ask of the maker's hours: in words, and as a gauge. @rule BOOK-6 */
export function DayHours({ day, was }: { readonly day: BenchDay; readonly was: BenchDay | undefined }): ReactNode {
  const { there, left, asked } = day;
  const over = left !== null && left.over < 0n;
  return (
    <div className="week-hours">
      <p>
        {over ? (
          <Sign sign="triangle" tone="wrong">
            {minutesShown(minus(ZERO, left))} over
          </Sign>
        ) : (
          hoursWords(day)
        )}
        {over && <span className="hours-of">{there === 0 ? overNone(day) : ofThere(asked, there)}</span>}
        {was && compare(was.asked, asked) !== 0 && <Was now={askedWords(asked)} before={askedWords(was.asked)} />}
      </p>
      {there !== null && <Gauge asked={asked} there={there} over={over} />}
    </div>
  );
}

const isNothing = (asked: Fraction): boolean => asked.over === 0n;
const askedWords = (asked: Fraction): string => (isNothing(asked) ? "no runs" : minutesShown(asked));
const ofThere = (asked: Fraction, there: number | null): string =>
  `${minutesShown(asked)} of ${minutesShown(whole(BigInt(there ?? 0)))}`;
const overNone = ({ isClosed }: BenchDay): string => (isClosed ? "closed that day" : "no bench hours");

function hoursWords({ asked, there, runs, isClosed }: BenchDay): string {
  if (there === null && isClosed) return runs.length === 0 ? "Closed" : `${minutesShown(asked)}, on a closed day`;
  if (there === null) return runs.length === 0 ? "No runs" : minutesShown(asked);
  if (there === 0) return isClosed ? "Closed" : "No bench hours";
  return isNothing(asked) ? `${minutesShown(whole(BigInt(there)))} free` : ofThere(asked, there);
}

/** As full as the day; one that asks for more than it has is full, and hatched. */
function Gauge({
  asked,
  there,
  over,
}: {
  readonly asked: Fraction;
  readonly there: number;
  readonly over: boolean;
}): ReactNode {
  const percent = over
    ? 100
    : there === 0
      ? 0
      : Number(roundedDown(times(asked, { over: 100n, under: BigInt(there) })));
  return (
    <svg className={over ? "gauge over" : "gauge"} aria-hidden="true" width="100%" height={7}>
      <rect className="gauge-there" width="100%" height={7} />
      {percent > 0 && <rect className="gauge-asked" width={`${String(percent)}%`} height={7} />}
    </svg>
  );
}
