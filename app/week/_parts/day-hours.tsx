import type { ReactNode } from "react";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { Sign } from "@/app/_ui/sign";
import { Was } from "@/app/_ui/was";
import type { WorkingLine } from "@/app/_ui/working";
import { type BenchDay, minutesOfRun } from "@/lib/domain/bench-hours";
import { compare, type Fraction, minus, roundedDown, times, whole, ZERO } from "@/lib/domain/fraction";
import type { Product } from "@/lib/domain/workshop";
import { countShown, minutesShown, weekdayShown } from "@/lib/edge/figures";

interface Hours {
  readonly day: BenchDay;
  readonly was: BenchDay | undefined;
  readonly productOf: (id: string) => Product;
}

/** What a day's runs ask of the maker's hours: in words, and as a gauge; it opens to how that comes about. @rule BOOK-6 */
export function DayHours({ day, was, productOf }: Hours): ReactNode {
  const { there, left, asked } = day;
  const over = left !== null && left.over < 0n;
  const inAll = there === 0 ? overNone(day) : ofThere(asked, there);
  return (
    <div className="week-hours">
      <p>
        {over ? (
          <Sign sign="triangle" tone="wrong">
            {minutesShown(minus(ZERO, left))} over
          </Sign>
        ) : (
          day.runs.length === 0 && hoursWords(day)
        )}
        {over && day.runs.length === 0 && <span className="hours-of">{inAll}</span>}
        {was && compare(was.asked, asked) !== 0 && <Was now={askedWords(asked)} before={askedWords(was.asked)} />}
      </p>
      {day.runs.length > 0 && (
        <HowItComes lines={hoursWorking(day, productOf)} says={<>{over ? inAll : hoursWords(day)}</>} />
      )}
      {there !== null && <Gauge asked={asked} there={there} over={over} />}
    </div>
  );
}

/** Each run's minutes, and what they come to: alone, or taken off the maker's hours. */
function hoursWorking(
  { runs, there, asked, left, day }: BenchDay,
  productOf: Hours["productOf"],
): readonly WorkingLine[] {
  const each = runs.map(({ product: id, units }, at): WorkingLine => {
    const product = productOf(id);
    const { labourMinutesPerRun: perRun, labourMinutesPerUnit: perUnit } = product;
    return {
      ...(left === null ? at > 0 && { operator: "+" } : { operator: "−" }),
      figure: minutesShown(minutesOfRun(product, units)),
      reason: `${product.name}: ${minutesShown(perRun)} a run and ${countShown(units)} × ${minutesShown(perUnit)} a unit`,
    };
  });
  if (left === null) return [...each, { figure: minutesShown(asked), reason: "asked of the day", isResult: true }];
  const isOver = left.over < 0n;
  return [
    { figure: minutesShown(whole(BigInt(there ?? 0))), reason: `your hours on a ${weekdayShown(day)}` },
    ...each,
    { figure: minutesShown(isOver ? minus(ZERO, left) : left), reason: isOver ? "over" : "free", isResult: true },
  ];
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
