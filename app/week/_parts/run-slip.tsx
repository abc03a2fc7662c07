import type { ReactNode } from "react";
import { Sign } from "@/app/_ui/sign";
import type { Day } from "@/lib/domain/calendar";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { counted } from "@/lib/edge/counted";
import { dayShown, stockShown } from "@/lib/edge/figures";
import { massOf, type RunAddress, unitsShown } from "./run-words";

interface Slip {
  readonly outlook: RunOutlook;
  readonly today: Day;
  readonly address: RunAddress;
  readonly withDay?: boolean;
}

/** A run in the week: what, how much, and what it is short of. It leads to its draws further down. */
export function RunSlip({ outlook, today, address, withDay = false }: Slip): ReactNode {
  const { run, product, makeable, short, mostUnits } = outlook;
  const [first] = short;
  return (
    <a className={makeable ? "run-slip" : "run-slip short"} href={address}>
      <b>{product.name}</b>
      {withDay && <span>{dayShown(run.date, today)}</span>}
      {first && (
        <Sign sign="box" tone="wrong">
          {short.length === 1
            ? `Short ${stockShown(first.by, first.material.measure, "lacking")}`
            : `Short of ${counted(short.length, "material", "materials")}`}
        </Sign>
      )}
      <span>
        {massOf(outlook)}, {unitsShown(run.units)}
      </span>
      {!makeable && <span>{mostUnits === 0n ? "None could be made" : `${unitsShown(mostUnits)} could be made`}</span>}
      {!withDay && run.date < today && <span>Not closed: draws today</span>}
    </a>
  );
}
