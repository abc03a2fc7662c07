import Link from "next/link";
import type { ReactNode } from "react";
import type { Workshop } from "@/lib/domain/workshop";
import { countShown } from "@/lib/edge/figures";

/** The workshop as a file: what is in it, saving it, and the way to another. */
export function TheFile({ workshop }: { readonly workshop: Workshop }): ReactNode {
  const { settings, materials, products, runs, lots, suppliers } = workshop;
  return (
    <section className="matters the-file" aria-labelledby="the-file">
      <h2 id="the-file">
        The workshop <small>{settings.name}</small>
      </h2>
      <div>
        <p className="quiet">
          {countShown(products.length)} products, {countShown(materials.length)} materials, {countShown(lots.length)}{" "}
          lots, {countShown(suppliers.length)} suppliers, {countShown(runs.length)} runs.
        </p>
        <a className="button" href="/workshop-file" download>
          Save it as a file
        </a>
        <Link className="button plain" href="/book/files">
          Open another workshop
        </Link>
      </div>
    </section>
  );
}
