import Link from "next/link";
import type { ReactNode } from "react";
import type { SwapChange, SwapPreview } from "@/lib/domain/formula-book/swap";
import type { CurrencyCode } from "@/lib/domain/money";
import { inARow } from "@/lib/edge/counted";
import { type WordsAbout } from "@/lib/edge/finding-words";
import { moneyShown, percentShown } from "@/lib/edge/figures";
import { massShown } from "@/lib/edge/mass-shown";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { recordPath } from "./addresses";
import { ComparedFinding } from "./compared";
import { countedFindings, FindingsList, WhoDecides } from "@/app/_ui/findings-list";

/** What a swap changes, breaks, mends, costs and leaves over. */
export function SwapPreviewed({
  preview,
  old,
  about,
  currency,
}: {
  readonly preview: SwapPreview;
  /** The name of what is taken out. */
  readonly old: string;
  readonly about: WordsAbout;
  readonly currency: CurrencyCode;
}): ReactNode {
  const { changes, breaks, mends, costs } = preview;
  return (
    <>
      <Part id="changes" title="What changes" beside={changes.length === 0 ? "the material alone" : null}>
        <ul className="findings">
          {changes.map((change, at) => (
            <li key={at} className="found">
              {changeInWords(change)}
            </li>
          ))}
        </ul>
      </Part>
      <Part id="breaks" title="What breaks" beside={countedFindings(breaks)}>
        <FindingsList findings={breaks} about={about} />
        <WhoDecides />
      </Part>
      {mends.length > 0 && (
        <Part id="mends" title="What it mends" beside={countedFindings(mends, "nothing")}>
          <FindingsList findings={mends} about={about} />
        </Part>
      )}
      <Part id="costs" title="What one costs" beside={costs.length === 0 ? "no product, or it does not add up" : null}>
        {costs.map(({ product, compared }) => (
          <p key={product.id}>
            <ComparedFinding
              compared={compared}
              first="the formula as it is"
              second="the swap"
              product={product.name}
              currency={currency}
            />
            {compared.kind === "compared" && compared.first.perUnit && compared.second.perUnit && (
              <span className="label">
                {" "}
                {moneyShown(compared.first.perUnit, currency, 2)} before,{" "}
                {moneyShown(compared.second.perUnit, currency, 2)} after.
              </span>
            )}
          </p>
        ))}
      </Part>
      <Part id="left" title="Left over" beside={null}>
        <LeftOver preview={preview} old={old} />
      </Part>
    </>
  );
}

const Part = ({
  id,
  title,
  beside,
  children,
}: {
  readonly id: string;
  readonly title: string;
  readonly beside: string | null;
  readonly children: ReactNode;
}): ReactNode => (
  <section className="matters" aria-labelledby={id}>
    <h2 id={id}>
      {title} {beside !== null && <small>{beside}</small>}
    </h2>
    <div>{children}</div>
  </section>
);

function changeInWords(change: SwapChange): string {
  switch (change.kind) {
    case "percent":
      return `Line ${String(change.line + 1)} goes from ${percentShown(change.before)} to ${percentShown(change.after)}, inside its use range.`;
    case "phase":
      return `Line ${String(change.line + 1)} moves from phase ${change.before ?? "none"} to phase ${change.after}, which is cool enough.`;
    case "needs a cooler phase":
      return `It needs a phase below ${change.addBelow}${NO_BREAK}°C, and none is written.`;
    case "needs another pH":
      return `It needs another target pH: it works ${[change.material.phFrom && `from pH ${change.material.phFrom}`, change.material.phTo && `up to pH ${change.material.phTo}`].filter(Boolean).join(" ")}.`;
  }
}

function LeftOver({ preview, old }: { readonly preview: SwapPreview; readonly old: string }): ReactNode {
  const { quantity, lots, stillUsedIn } = preview.leftOver;
  return (
    <p>
      {quantity === 0n ? (
        <>Nothing usable of {old} is on the shelf. </>
      ) : (
        <>
          <b>{massShown(quantity, "there")}</b> of {old} would stay on the shelf (
          {inARow(lots.map(({ id }) => `lot ${id}`))}).{" "}
        </>
      )}
      {stillUsedIn.length === 0 ? (
        <>No other formula uses it.</>
      ) : (
        <>
          It is still used in{" "}
          {stillUsedIn.map(({ id, name }, at) => (
            <span key={id}>
              {at > 0 && ", "}
              <Link href={recordPath("formulas", id)}>{name}</Link>
            </span>
          ))}
          .
        </>
      )}
    </p>
  );
}
