import type { ReactNode } from "react";
import type { Material } from "@/lib/domain/workshop";
import { stockShown } from "@/lib/edge/figures";
import "./have-need.css";

interface Bar {
  /** µg or pieces; more is needed than is had. */
  readonly have: bigint;
  readonly need: bigint;
  readonly material: Material;
}

/** One run, one limiting material: solid to what is here, hatched to what is needed. Needs one `RibbonInks` on the page. */
export function HaveNeed({ have, need, material }: Bar): ReactNode {
  const shown = (amount: bigint, direction: "there" | "lacking"): string =>
    stockShown(amount, material.measure, direction);
  const [had, lacked, needed] = [shown(have, "there"), shown(need - have, "lacking"), shown(need, "lacking")];
  const share = `${((have * 10_000n) / need).toString().padStart(3, "0").replace(/(..)$/, ".$1")}%`;
  return (
    <>
      <svg
        className="have-need"
        role="img"
        aria-label={`${had} of ${needed} of ${material.name} are here; ${lacked} are short.`}
        width="100%"
        height={22}
      >
        <rect className="have-need-lack" width="100%" height={22} />
        <rect className="have-need-have" width={share} height={22} />
      </svg>
      <p className="have-need-words" aria-hidden="true">
        <span>have {had}</span>
        <span className="warn">short {lacked}</span>
        <span>need {needed}</span>
      </p>
    </>
  );
}
