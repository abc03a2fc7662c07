import type { ReactNode } from "react";
import { type AskedField, AskingForm } from "@/app/_ui/asking-form";
import { Sign } from "@/app/_ui/sign";
import { type Day, isoDate } from "@/lib/domain/calendar";
import { plannedMinutes } from "@/lib/domain/ledger/planned-loss";
import { ratio, roundedHalfAway } from "@/lib/domain/fraction";
import { byDrawOrder, isUsable } from "@/lib/domain/lots";
import type { MadeRunResult } from "@/lib/domain/made-run";
import type { MaterialUse } from "@/lib/domain/needs";
import type { RunOutlook, RunShortage } from "@/lib/domain/plan-figures";
import type { Measure } from "@/lib/domain/quantity";
import type { Lot, Material, Workshop } from "@/lib/domain/workshop";
import { inARow } from "@/lib/edge/counted";
import { dayShown, minutesShown, moneyShown, stockInFull, stockShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { measureField, spiltField, takesField } from "@/lib/edge/forms/posting-forms";
import { stockAsTyped } from "@/lib/edge/forms/typed-stock";
import { makeARun } from "../make/making-actions";
import { unitsShown } from "./run-words";

export interface Making {
  readonly outlook: RunOutlook;
  readonly today: Day;
  /** What closing it today as planned would take, lot by lot: all that it needs, or what is there of it. */
  readonly made: Extract<MadeRunResult, { readonly kind: "made" }>;
  readonly short: readonly RunShortage[];
  /** Of everything that it could draw, whatever the shelf has made ahead. */
  readonly uses: readonly MaterialUse[];
  readonly workshop: Workshop;
}

/** Whether the shelf has what it needs, before anything is asked. */
export function MakeFinding({ making }: { readonly making: Making }): ReactNode {
  const { outlook, short, made, workshop, today } = making;
  const { units, date } = outlook.run;
  const planned = `${unitsShown(units)} planned for ${dayShown(date, today)}.`;
  const worth = moneyShown(made.value, workshop.settings.currency);
  if (short.length === 0) return `${planned} As proposed it takes ${worth} of materials from the shelf.`;
  const lacks = short.map(({ material, by }) => `${stockShown(by, material.measure, "lacking")} of ${material.name}`);
  return (
    <>
      {planned}{" "}
      <Sign sign="box" tone="wrong">
        The shelf, as it is written down, lacks {inARow(lacks)}.
      </Sign>{" "}
      Write what was really drawn; what was there without being written down is put right by a count first.
    </>
  );
}

/** What was drawn, lot by lot, as proposed: first expired first out. Amounts can be changed, and lots chosen or split. */
export function MakeForm({
  making,
  newKey,
  newLot,
}: {
  readonly making: Making;
  readonly newKey: string;
  readonly newLot: string;
}): ReactNode {
  const { outlook, today, workshop, uses } = making;
  const { run } = outlook;
  const lots = uses.flatMap(({ material }) => lotsOf(workshop, material.id).map((lot) => ({ lot, material })));
  const outOfDate = lots.some(({ lot }) => !isUsable(lot, today));
  return (
    <section className="week-form" aria-label="What was made and drawn">
      <AskingForm
        key={run.id}
        act={makeARun}
        carried={{
          run: run.id,
          product: run.product,
          from: isoDate(run.date),
          units: run.units.toString(),
          ...Object.fromEntries(lots.map(({ lot, material }) => [measureField(lot.id), material.measure])),
        }}
        kept={{ key: newKey, lot: newLot }}
        takesFocus
        className="asking-grouped asking-on-paper"
        fields={[...aboutTheRun(making), ...uses.flatMap((use) => drawsOf(use, making)), ...lots.map(spiltOf)]}
        button="Close it as made, drawing this"
        isFirst
        {...(outOfDate && { other: { deed: "out of date", label: "The same, with lots that are out of date" } })}
      />
      {outOfDate && (
        <p className="small soft">
          Whether a lot that is out of date may still be used is a matter of its supplier’s word and of local rules,
          which come first.
        </p>
      )}
    </section>
  );
}

const aboutTheRun = ({ outlook: { run, product }, today }: Making): readonly AskedField[] => [
  {
    name: "made",
    label: "Units that came out",
    type: "text",
    value: run.units.toString(),
    hint: `${unitsShown(run.units)} planned; 0 where the batch failed.`,
  },
  { name: "day", label: "Made on", type: "date", value: isoDate(today) },
  {
    name: "bestBefore",
    label: "Best before (optional)",
    type: "text",
    value: "",
    hint: "A date as 2027-11-25, or a month as 11/2027.",
  },
  {
    name: "minutes",
    label: "Minutes at the bench",
    type: "text",
    value: "",
    hint: `Left empty, what is planned: ${minutesShown(plannedMinutes(product, run.units))}.`,
  },
  { name: "note", label: "Note (optional)", type: "text", value: "" },
];

const lotsOf = (workshop: Workshop, material: string): readonly Lot[] =>
  workshop.lots.filter((lot) => lot.material === material && lot.remaining > 0n).sort(byDrawOrder);

/** One field for each lot that is there; the proposal stands in those that it takes from. */
function drawsOf({ material }: MaterialUse, { workshop, made, today, short }: Making): readonly AskedField[] {
  const { measure, name, id } = material;
  const lacking = short.find((each) => each.material.id === id);
  const asked = made.asked.find((each) => each.material.id === id);
  const instead = asked?.insteadOf
    ? `, ${stockShown(asked.insteadOf.quantity, measure, "lacking")} of it instead of making ${asked.insteadOf.premix.name}`
    : "";
  const needs = asked
    ? `needs ${stockInFull(toTheStep(asked.need, workshop, measure), measure)}${instead}`
    : "nothing of it is needed";
  const group = {
    title: name,
    says: lacking ? `${needs}; ${stockShown(lacking.by, measure, "lacking")} is lacking` : needs,
  };
  const unit = measure === "mass" ? "g" : "pieces";
  return lotsOf(workshop, id).map((lot) => {
    const draw = made.draws.find((each) => each.lot.id === lot.id);
    return {
      name: takesField(lot.id),
      label: `From lot ${lot.id}, ${unit}`,
      type: "text" as const,
      value: draw ? stockAsTyped(asWeighed(draw, workshop, measure), measure) : "",
      hint: `${stockShown(lot.remaining, measure, "there")} there${expiryOf(lot, today)}`,
      group,
    };
  });
}

/**
 * What the balance would show of a draw: to the nearest of its steps. A trace of less than a step, and all that is left
 * of a lot, stay as they are.
 */
function asWeighed({ lot, quantity }: Draw, workshop: Workshop, measure: Measure): bigint {
  if (quantity === lot.remaining) return quantity;
  const weighed = toTheStep(quantity, workshop, measure);
  return weighed > lot.remaining ? quantity : weighed;
}

function toTheStep(quantity: bigint, { settings }: Workshop, measure: Measure): bigint {
  if (measure === "count") return quantity;
  const step: bigint = settings.balanceStep.quantity;
  const weighed = roundedHalfAway(ratio(quantity, step)) * step;
  return weighed === 0n ? quantity : weighed;
}

type Draw = Making["made"]["draws"][number];

/** What was lost of a lot beside the batch. @rule LEDGER-12 */
const spiltOf = ({
  lot,
  material: { name, measure },
}: {
  readonly lot: Lot;
  readonly material: Material;
}): AskedField => ({
  name: spiltField(lot.id),
  label: `Spilt of ${name}, lot ${lot.id}, ${measure === "mass" ? "g" : "pieces"}`,
  type: "text",
  value: "",
  group: {
    title: "Something was spilt or broken beside the batch",
    says: "beyond what the plan loses: it leaves the shelf as lost, with what it cost",
    isFolded: true,
  },
});

function expiryOf(lot: Lot, today: Day): string {
  if (lot.expires === null) return "";
  const day = dayShown(lot.expires, today, { weekday: false });
  return isUsable(lot, today) ? `, to${NO_BREAK}${day}` : `; out of date since ${day}`;
}
