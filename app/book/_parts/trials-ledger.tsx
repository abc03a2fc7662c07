import type { ReactNode } from "react";
import type { Day } from "@/lib/domain/calendar";
import type { ComparedTrial } from "@/lib/domain/formula-book/compared-trials";
import { readAt, timesRead } from "@/lib/domain/formula-book/trials";
import { times, whole } from "@/lib/domain/fraction";
import type { CurrencyCode } from "@/lib/domain/money";
import { type DecimalText, decimalValue, WHOLE } from "@/lib/domain/quantity";
import { dayShown, moneyShown, percentShown, quotientShown } from "@/lib/edge/figures";
import { timeAfterShown } from "@/lib/edge/forms/time-after";
import { Ledger } from "@/app/_ui/ledger";

export interface AboutTrials {
  /** The name of what was varied. */
  readonly varied: string | null;
  /** The name of the product in which a unit is priced. */
  readonly product: string | null;
  readonly currency: CurrencyCode;
}

/** Every trial in a row: what was varied, pH and viscosity at each time, and what one unit would cost. */
export function TrialsLedger({
  compared,
  about: { varied, product, currency },
  today,
}: {
  readonly compared: readonly ComparedTrial[];
  readonly about: AboutTrials;
  readonly today: Day;
}): ReactNode {
  const trials = compared.map(({ trial }) => trial);
  const after = timesRead(trials);
  const read = (what: "ph" | "viscosity") =>
    after.filter((time) => trials.some((trial) => readAt(trial, time, what) !== null));
  const [phs, viscosities] = [read("ph"), read("viscosity")];
  const columns = [
    { name: "Trial", kind: "text" },
    ...(varied === null ? [] : [{ name: varied, kind: "number" } as const]),
    ...phs.map((time) => ({ name: `pH, ${timeAfterShown(time)}`, kind: "number" }) as const),
    ...viscosities.map((time) => ({ name: `mPa·s, ${timeAfterShown(time)}`, kind: "number" }) as const),
    ...(product === null ? [] : [{ name: `Cost of one ${product}`, kind: "number" } as const]),
  ] as const;
  return (
    <Ledger caption="The trials beside one another" columns={columns} className="book-ledger">
      {compared.map(({ trial, share, perUnit }) => (
        <tr key={trial.id}>
          <th scope="row">
            {trial.name}
            <small>{dayShown(trial.day, today, { year: true })}</small>
          </th>
          {share !== null && (
            <td className="number">
              <OnPhone says={`${varied ?? ""} `} />
              {percentShown(times(share, whole(WHOLE)))}
            </td>
          )}
          {phs.map((time) => (
            <td key={`ph ${String(time)}`} className="number">
              <OnPhone says={`pH, ${timeAfterShown(time)}: `} />
              {readAt(trial, time, "ph") ?? "–"}
            </td>
          ))}
          {viscosities.map((time) => (
            <td key={`viscosity ${String(time)}`} className="number">
              <OnPhone says={`mPa·s, ${timeAfterShown(time)}: `} />
              {shownOrNone(readAt(trial, time, "viscosity"))}
            </td>
          ))}
          {product !== null && (
            <td className="number">
              <OnPhone says="cost " />
              {perUnit === null ? "not known" : moneyShown(perUnit, currency, 2)}
            </td>
          )}
        </tr>
      ))}
    </Ledger>
  );
}

/** Where the columns have no heads over them. */
export const OnPhone = ({ says }: { readonly says: string }): ReactNode => (
  <span className="label phone-only" aria-hidden="true">
    {says}
  </span>
);

const shownOrNone = (figure: DecimalText | null): string =>
  figure === null ? "–" : quotientShown(decimalValue(figure));
