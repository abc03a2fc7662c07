import type { ReactNode } from "react";
import { OpeningRow } from "@/app/_ui/ledger";
import { Working } from "@/app/_ui/working";
import type { Fraction } from "@/lib/domain/fraction";
import type { MicroUnits } from "@/lib/domain/money";
import { minutesShown, priceShown } from "@/lib/edge/figures";
import type { CostView } from "./cost-view";
import type { Opened } from "./price-working";
import { inWorking, timeWorking } from "./row-working";

/** Of the table that the rows stand in. */
const MADE_UP_COLUMNS = 6;

/** A row of the cost that is no material, opening to its arithmetic. */
export function PlainRow({
  id,
  name,
  says,
  cost,
  opened,
  view,
}: {
  readonly id: string;
  readonly name: string;
  readonly says: string;
  readonly cost: Fraction | null;
  readonly opened: Opened;
  readonly view: CostView;
}): ReactNode {
  const cells = (
    <>
      <td colSpan={4} className="soft wide-gap second-line">
        {says}
      </td>
      <td className="number end">{inWorking(cost, view)}</td>
    </>
  );
  return (
    <OpeningRow id={id} name={name} cells={cells} across={MADE_UP_COLUMNS}>
      <Working {...opened} />
    </OpeningRow>
  );
}

/** Bench time at an hourly rate. */
export function TimeRow({
  id,
  name,
  cost,
  perHour,
  view,
}: {
  readonly id: string;
  readonly name: string;
  readonly cost: Fraction;
  readonly perHour: MicroUnits;
  readonly view: CostView;
}): ReactNode {
  const says = `${minutesShown(view.cost.minutes)} × ${priceShown(perHour, view.currency)} an hour`;
  return <PlainRow id={id} name={name} says={says} cost={cost} opened={timeWorking(cost, perHour, view)} view={view} />;
}
