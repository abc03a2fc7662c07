import Link from "next/link";
import type { ReactNode } from "react";
import { toBuyLines, toBuySum } from "@/app/_ui/to-buy-working";
import { Working, type WorkingLine } from "@/app/_ui/working";
import type { PlannedLine } from "@/lib/domain/buying/basket-of-plan";
import { countShown, priceShown, stockInFull } from "@/lib/edge/figures";
import { figuresThatAdd } from "@/lib/edge/figures-that-add";
import { packReason } from "@/lib/edge/pack-words";
import { type BuyingView, moneyIn, whyAddress } from "./buying-view";
import { thenEnough } from "./then-enough";

/** For how long it is then enough; and, behind one word, how that, the packs and the choice of them come about. */
export function LineOpened({
  line,
  view,
  words,
}: {
  readonly line: PlannedLine;
  readonly view: BuyingView;
  readonly words: ReactNode;
}): ReactNode {
  const { offer, material } = line;
  const enough = thenEnough(material, view);
  return (
    <>
      {enough && <span>{enough.says}. </span>}
      <details className="as-table how-it-comes in-words line-opened" open={words !== null}>
        <summary>
          How it comes about<span className="unseen">, {material.name}</span>
        </summary>
        <p>
          {words ?? (
            <Link className="line-why" href={whyAddress(view.asked, offer.id)} prefetch={false}>
              Why these?<span className="unseen"> {material.name}</span>
            </Link>
          )}
        </p>
        <Working lines={lineLines(line, view)} />
        {enough && <h3>{enough.says}</h3>}
        {enough && <Working lines={enough.lines} notes={enough.notes} />}
      </details>
    </>
  );
}

/** What is needed, in the days to be covered; what the packs hold, less that; and what they cost. */
function lineLines({ offer, material, packs, packPrice, cost }: PlannedLine, view: BuyingView): readonly WorkingLine[] {
  const { measure } = material;
  const wanted = view.wanted.get(material.id);
  const least = wanted?.least;
  const left = view.leftOver.get(material.id);
  const bought = packs * offer.pack.quantity;
  const others = wanted && left !== undefined ? wanted.quantity + left - bought : 0n;
  const toBuy = wanted && least ? { ...wanted, material, least, wanted: wanted.quantity, today: view.today } : null;
  const rest = wanted && left !== undefined ? [[bought, others, -wanted.quantity, left]] : [];
  const figure = figuresThatAdd([...(toBuy ? [toBuySum(toBuy)] : []), ...rest], measure);
  return [
    ...(toBuy ? toBuyLines(toBuy, figure) : []),
    { figure: stockInFull(offer.pack.quantity, measure), reason: packReason(material, offer.pack) },
    { operator: "×", figure: countShown(packs), reason: packs === 1n ? "pack" : "packs" },
    { figure: figure(bought), reason: "bought", isResult: true },
    ...(wanted && left !== undefined
      ? [
          ...(others > 0n ? [{ operator: "+" as const, figure: figure(others), reason: "in other packs of it" }] : []),
          { operator: "−" as const, figure: figure(wanted.quantity), reason: "needed" },
          { figure: figure(left), reason: "more than needed", isResult: true },
        ]
      : []),
    { figure: priceShown(packPrice, view.currency), reason: "one pack, where so many are bought" },
    { operator: "×", figure: countShown(packs), reason: packs === 1n ? "pack" : "packs" },
    { figure: moneyIn(view, cost), reason: "what they cost", isResult: true },
  ];
}
