import type { ReactNode } from "react";
import type { SwapPreview } from "@/lib/domain/formula-book/swap";
import type { CurrencyCode } from "@/lib/domain/money";
import { moneyShown } from "@/lib/edge/figures";
import { moreOrLess } from "@/lib/edge/more-or-less";
import { Ledger } from "@/app/_ui/ledger";
import { ComparedFinding } from "./compared";

const COLUMNS = [
  { name: "One of", kind: "text" },
  { name: "As it is", kind: "number" },
  { name: "With the swap", kind: "number" },
  { name: "Difference", kind: "number" },
] as const;

type Cost = SwapPreview["costs"][number];

/** What one of each product costs before and after; a sentence for each of which that is not known. */
export function SwapCosts({
  costs,
  currency,
}: {
  readonly costs: readonly Cost[];
  readonly currency: CurrencyCode;
}): ReactNode {
  const [known, others] = [costs.flatMap(costKnown), costs.filter((cost) => costKnown(cost).length === 0)];
  return (
    <>
      {others.map(({ product, compared }) => (
        <p key={product.id}>
          <ComparedFinding
            compared={compared}
            first="the formula as it is"
            second="the swap"
            product={product.name}
            currency={currency}
          />
        </p>
      ))}
      {known.length > 0 && (
        <>
          <Ledger caption="What one costs before and after" columns={COLUMNS} className="book-ledger">
            {known.map(({ product, before, after, dearerBy }) => (
              <tr key={product.id}>
                <th scope="row">{product.name}</th>
                <td className="number" data-of="As it is">
                  {moneyShown(before, currency, 2)}
                </td>
                <td className="number" data-of="With the swap">
                  {moneyShown(after, currency, 2)}
                </td>
                <td className="number" data-of="Difference">
                  {moreOrLess(dearerBy, currency, 2)}
                </td>
              </tr>
            ))}
          </Ledger>
          <p className="label">
            Each figure is the exact one rounded once, so that a difference may differ in its last digit.
          </p>
        </>
      )}
    </>
  );
}

const costKnown = ({ product, compared }: Cost) =>
  compared.kind === "compared" && compared.first.perUnit && compared.second.perUnit && compared.dearerBy
    ? [{ product, before: compared.first.perUnit, after: compared.second.perUnit, dearerBy: compared.dearerBy }]
    : [];
