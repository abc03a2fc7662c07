import type { ReactNode } from "react";
import type { Workshop } from "@/lib/domain/workshop";
import { countShown } from "@/lib/edge/figures";
import { OpenDemoForm } from "./open-demo-form";
import { OpenEmptyForm } from "./open-empty-form";
import { OpenFileForm } from "./open-file-form";

/** The workshop as a file: saved, or replaced by another, of which the present one is kept. */
export function TheFile({ workshop }: { readonly workshop: Workshop }): ReactNode {
  const { settings, materials, products, runs, lots, suppliers } = workshop;
  return (
    <section className="matters the-file" id="file" aria-labelledby="the-file">
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
        <details>
          <summary>Open another workshop</summary>
          <div className="ways">
            <section className="way two" aria-label="Open a workshop file">
              <p>The present workshop is kept as a file beside the store, and its name is told here.</p>
              <OpenFileForm />
            </section>
            <section className="way two" aria-label="Open the demo workshop">
              <p>The invented workshop that comes with the app.</p>
              <OpenDemoForm />
            </section>
            <section className="way two" aria-label="Begin with an empty workshop">
              <p>A name and a currency, and nothing else yet.</p>
              <OpenEmptyForm />
            </section>
          </div>
        </details>
      </div>
    </section>
  );
}
