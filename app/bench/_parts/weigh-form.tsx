"use client";

import type { ReactNode } from "react";
import { toleranceShown, weightShown } from "@/lib/edge/bench-weights";
import type { Faults } from "@/lib/edge/forms/posting-forms";
import { restOf } from "./bench-finding";
import { Hidden } from "./hidden";
import type { LineAtHand } from "./line-at-hand";
import { useWeighing } from "./use-weighing";
import { Field } from "./weigh-field";
import { Hang, HANG_ID, isOutside } from "./weigh-hang";
import type { OnDesk } from "./weigh-line";
import { Lots } from "./weigh-lots";

/**
 * The line that is weighed now: what, how much, within what, from which lot. A scale or a scanner that types is typing
 * like any other; Enter writes it down and opens the next line.
 */
export function WeighForm({
  line,
  view,
  notes,
  isFirst,
}: { readonly line: LineAtHand; readonly isFirst: boolean } & OnDesk): ReactNode {
  const weighing = useWeighing({ line, notes, isFirst });
  const { form, send, submit, look, scan, lot, setLot, hanging, isKept, again, keep, told, typed, says } = weighing;
  const isPoured = line.line.of.kind === "formula";
  const chosen = line.lots.find(({ id }) => id === lot);
  return (
    <form
      className="weigh screen-only"
      action={send}
      onSubmit={submit}
      onInput={look}
      ref={form}
      noValidate
      aria-label={`Weigh ${line.line.called}`}
    >
      {says !== null && (
        <p className="fault" role="alert">
          {says}
        </p>
      )}
      <Hidden
        values={{
          kind: "weighed",
          line: line.line.key,
          batch: view.batch,
          key: view.newKeys[0] ?? "",
          who: notes.who,
          seen: JSON.stringify(line.all.map(({ key }) => key)),
        }}
      />
      <Target line={line} decimals={view.decimals} />
      <div className={isPoured ? "weigh-fields poured" : "weigh-fields"}>
        {!isPoured && (
          <Lots
            line={line}
            rest={restOf(line)}
            decimals={view.decimals}
            lot={lot}
            choose={setLot}
            scan={scan}
            fault={told.lot}
            typed={typed.scanned}
          />
        )}
        <Balance line={line} decimals={view.decimals} {...{ told, typed, hanging, isKept, again, keep }} />
      </div>
      <Further
        isPoured={isPoured}
        told={told}
        typed={typed}
        isWanted={chosen !== undefined && chosen.remaining < restOf(line) && hanging?.within !== true}
      />
    </form>
  );
}

/** What the balance shows, how that hangs, and the button that writes it down. */
function Balance({
  line,
  decimals,
  told,
  typed,
  hanging,
  isKept,
  again,
  keep,
}: {
  readonly line: LineAtHand;
  readonly decimals: number;
} & Pick<ReturnType<typeof useWeighing>, "told" | "typed" | "hanging" | "isKept" | "again" | "keep">): ReactNode {
  const asksWhy = told.why !== undefined || isKept;
  const isAsked = asksWhy && isOutside(hanging) && !isKept;
  return (
    <div className="weigh-balance">
      <Field
        name="weight"
        label={line.all.length > 0 ? "Balance shows of the rest" : "Balance shows"}
        fault={told.weight}
        typed={typed.weight}
        className="weigh-weight"
        isGrams
        describedBy={HANG_ID}
      />
      <Hang line={line.line} hanging={hanging} decimals={decimals} isAsked={isAsked} again={again} keep={keep} />
      {asksWhy && !isAsked ? (
        <Field name="why" label="Why it is kept" fault={told.why} typed={typed.why} className="weigh-why" />
      ) : (
        <noscript>
          <Field name="why" label="Why it is kept, where it is out of tolerance" fault={undefined} typed={typed.why} />
        </noscript>
      )}
      <button className="button first weigh-write">Write it down</button>
    </div>
  );
}

/** What is seldom needed: a vessel that was not tared, and more of the line from another lot. */
const Further = ({
  isPoured,
  told,
  typed,
  isWanted,
}: {
  readonly isPoured: boolean;
  readonly told: Faults;
  readonly typed: Faults;
  readonly isWanted: boolean;
}): ReactNode => (
  <details
    className="weigh-further opens"
    open={isWanted || told.vessel !== undefined || Boolean(typed.vessel) || typed.more === "yes"}
  >
    <summary>{isPoured ? "The vessel was not tared" : "Not tared, or more from another lot"}</summary>
    <div className="weigh-fields">
      {!isPoured && (
        <label className="weigh-more">
          <input type="checkbox" name="more" value="yes" defaultChecked={typed.more === "yes"} />
          More of it follows from another lot
        </label>
      )}
      <Field
        name="vessel"
        label="Empty vessel (where it was not tared)"
        fault={told.vessel}
        typed={typed.vessel}
        isGrams
      />
    </div>
  </details>
);

/** The big figure is what goes on the balance now. */
function Target({ line, decimals }: { readonly line: LineAtHand; readonly decimals: number }): ReactNode {
  const { line: asked, total, all, percent } = line;
  const rest = restOf(line);
  return (
    <div className="weigh-target">
      <div>
        <h3>{asked.called}</h3>
        <p>
          {[percent, asked.of.kind === "formula" ? "pour in what was made of it" : null].filter(Boolean).join(" · ")}
        </p>
        {all.length > 0 && (
          <p>
            {weightShown(total, decimals)} of {weightShown(asked.target, decimals)} is written down
          </p>
        )}
      </div>
      <p className="weigh-figure">
        <b>{weightShown(rest, decimals)}</b> <span>{toleranceShown(rest, asked.tolerance, decimals)}</span>
      </p>
    </div>
  );
}
