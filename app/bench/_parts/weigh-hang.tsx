"use client";

import type { ReactNode } from "react";
import { Sign } from "@/app/_ui/sign";
import type { SheetLine } from "@/lib/domain/bench/batch";
import type { Judged } from "@/lib/domain/bench/weights";
import { offInWords, tenfoldInWords, weightShown } from "@/lib/edge/bench-weights";
import { Plumb } from "./plumb";

/** How the line would stand with what is in the weight field. */
export interface Hanging extends Judged {
  /** Too little, and more of it follows from another lot: nothing is wrong yet. */
  readonly isShort: boolean;
}

export const isOutside = (hanging: Hanging | null): hanging is Hanging =>
  hanging !== null && !hanging.within && !hanging.isShort;

interface Hang {
  readonly line: SheetLine;
  readonly hanging: Hanging | null;
  readonly decimals: number;
  /** Whether it was to be written down although it is outside: then there are two ways on. */
  readonly isAsked: boolean;
  readonly again: () => void;
  readonly keep: () => void;
}

export const HANG_ID = "weigh-hang";

/** The plumb of what is being typed, and the same in words. */
export const Hang = ({ line, hanging, decimals, isAsked, again, keep }: Hang): ReactNode => (
  <div className="weigh-hang">
    <Plumb off={hanging?.off ?? null} tolerance={line.tolerance} />
    <p id={HANG_ID} role={isAsked ? "alert" : undefined}>
      {hanging !== null && <HangWords line={line} hanging={hanging} decimals={decimals} />}
    </p>
    {isAsked && (
      <div className="weigh-ways">
        <button type="button" className="button" onClick={again}>
          Weigh again
        </button>
        <button type="button" className="button" onClick={keep}>
          Keep it, say why
        </button>
      </div>
    )}
  </div>
);

function HangWords({
  line: { target, tolerance },
  hanging,
  decimals,
}: Pick<Hang, "line" | "decimals"> & { readonly hanging: Hanging }): ReactNode {
  const { off, within, total } = hanging;
  const tenfold = tenfoldInWords(hanging, decimals);
  if (within)
    return (
      <Sign sign="tick" tone="open">
        {offInWords(off, tolerance, decimals)}
      </Sign>
    );
  if (hanging.isShort)
    return (
      <Sign sign="dash" tone="still">
        {weightShown(target - total, decimals)} follows from another lot
      </Sign>
    );
  return (
    <Sign sign="triangle" tone="wrong">
      {offInWords(off, tolerance, decimals)}
      {tenfold !== null && `. ${tenfold}`}
    </Sign>
  );
}
