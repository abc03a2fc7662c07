import Link from "next/link";
import type { ReactNode } from "react";
import type { SwapAsked, SwapPreview } from "@/lib/domain/formula-book/swap";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Formula } from "@/lib/domain/workshop";
import { inARow } from "@/lib/edge/counted";
import { type WordsAbout } from "@/lib/edge/finding-words";
import { massShown } from "@/lib/edge/mass-shown";
import { swapInWords } from "@/lib/edge/swap-words";
import { recordPath } from "./addresses";
import { SwapCosts } from "./swap-costs";
import { countedFindings, FindingsList, WhoDecides } from "@/app/_ui/findings-list";

/** What a swap changes, breaks, mends, costs and leaves over. */
export function SwapPreviewed({
  preview,
  before,
  asked,
  about,
  currency,
}: {
  readonly preview: SwapPreview;
  /** The formula as it stands. */
  readonly before: Formula;
  readonly asked: SwapAsked;
  readonly about: WordsAbout;
  readonly currency: CurrencyCode;
}): ReactNode {
  const { breaks, mends, costs } = preview;
  const old = about.nameOf({ kind: "material", id: asked.from });
  return (
    <>
      <Part id="changes" title="What changes" beside={null}>
        <ul className="findings">
          {swapInWords(preview, before, asked, about.nameOf).map((sentence) => (
            <li key={sentence} className="found">
              {sentence}
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
        <SwapCosts costs={costs} currency={currency} />
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
