import Link from "next/link";
import type { ReactNode } from "react";
import type { Workshop } from "@/lib/domain/workshop";
import { countShown } from "@/lib/edge/figures";

const many = ({ length }: { readonly length: number }, what: string): string =>
  `${countShown(length)} ${length === 1 ? what : `${what}s`}`;

/** The workshop as a file: what is in it, saving it, and the way to another. */
export function TheFile({ workshop }: { readonly workshop: Workshop }): ReactNode {
  const { settings, materials, products, runs, lots, suppliers } = workshop;
  // There is nothing to count and nothing worth a file yet.
  const isEmpty = [materials, products, runs, lots, suppliers].every(({ length }) => length === 0);
  return (
    <section className="matters the-file" aria-labelledby="the-file">
      <h2 id="the-file">
        The workshop <small>{settings.name}</small>
      </h2>
      <div>
        {!isEmpty && (
          <p className="quiet">
            {[
              many(products, "product"),
              many(materials, "material"),
              many(lots, "lot"),
              many(suppliers, "supplier"),
              many(runs, "run"),
            ].join(", ")}
            .
          </p>
        )}
        {!isEmpty && (
          <a className="button" href="/workshop-file" download>
            Save it as a file
          </a>
        )}
        <Link className="button plain" href="/book/files">
          Open another workshop
        </Link>
      </div>
    </section>
  );
}
