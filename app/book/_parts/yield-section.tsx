import type { ReactNode } from "react";
import { type Fraction, roundedHalfEven, times, whole } from "@/lib/domain/fraction";
import { FEWEST_BATCHES, type YieldFit } from "@/lib/domain/yield-fit";
import { counted } from "@/lib/edge/counted";
import { gramsShown, shareShown } from "@/lib/edge/figures";
import { recordPath } from "./addresses";

/** What the batches of a product say of its heel and process loss; offered for its form, and kept by nobody but the maker. */
export function YieldSection({ product, fit }: { readonly product: string; readonly fit: YieldFit }): ReactNode {
  return (
    <section className="matters" aria-labelledby="yield">
      <h2 id="yield">
        Yield{" "}
        <small>
          {fit.batches === 0
            ? "no batch has filled anything yet"
            : `${counted(fit.batches, "batch has", "batches have")} filled something`}
        </small>
      </h2>
      <div>
        <Said fit={fit} />
        {fit.kind === "fitted" && (
          <form action={recordPath("products", product)} method="get">
            <input type="hidden" name="heel" value={heelTyped(fit.heel)} />
            <input type="hidden" name="processLoss" value={percentTyped(fit.share)} />
            <button className="button">
              Put {heelTyped(fit.heel)} and {percentTyped(fit.share)} % into the form
            </button>
          </form>
        )}
        <p className="label">
          Fitted by least squares: loss = heel + process loss × bulk, neither below zero. It changes nothing until you
          keep the product.
        </p>
      </div>
    </section>
  );
}

function Said({ fit }: { readonly fit: YieldFit }): ReactNode {
  switch (fit.kind) {
    case "too few":
      return <p>Once {FEWEST_BATCHES} batches are made, what is lost is told apart into heel and process loss.</p>;
    case "one size":
      return <p>All batches were of one size, so that heel and process loss cannot be told apart.</p>;
    case "fitted":
      return (
        <p>
          Heel <b>{gramsShown(fit.heel, 1)}</b>
          {errorOf(fit.heelError, (error) => gramsShown(error, 1))}, process loss <b>{shareShown(fit.share)}</b>
          {errorOf(fit.shareError, shareShown)}.
        </p>
      );
  }
}

const errorOf = (error: Fraction | null, shown: (error: Fraction) => string): string =>
  error === null ? " (held at zero, or by itself)" : ` ± ${shown(error)} (standard error)`;

/** To a tenth of a gram. */
function heelTyped(heel: Fraction): string {
  const tenths = roundedHalfEven({ over: heel.over, under: heel.under * 100_000n });
  return `${(tenths / 10n).toString()}.${(tenths % 10n).toString()} g`;
}

/** To a hundredth of a percent. */
function percentTyped(share: Fraction): string {
  const hundredths = roundedHalfEven(times(share, whole(10_000n)));
  return `${(hundredths / 100n).toString()}.${(hundredths % 100n).toString().padStart(2, "0")}`;
}
