import type { ReactNode } from "react";
import { LabelDrawing } from "@/app/_ui/label-drawing";
import { stateOf } from "@/lib/domain/bench/batch";
import { formulaCalled } from "@/lib/domain/bench/started-as";
import type { KeptLabel } from "@/lib/domain/label/kept-label";
import { MARKET_IN_A_SENTENCE } from "@/lib/edge/forms/fact-words";
import { dayShown } from "@/lib/edge/figures";
import { keptLayout, saidOnLabel } from "@/lib/edge/label/kept-layout";
import type { BatchOnPage } from "../batch-for-page";

/** Which versions it was made by, and room for signatures. */
export function Marks({ found: { batch, workshop, as, today } }: { readonly found: BatchOnPage }): ReactNode {
  return (
    <section className="record-marks" aria-label="Versions and signatures">
      <p>
        Formula versions:{" "}
        {batch.versions
          .map(({ formula, number }) => `${formulaCalled(batch, workshop, formula)} ${String(number)}`)
          .join(", ")}
      </p>
      <p>
        Planned for {dayShown(batch.run.date, today, { year: true })}. Weighed in {as.workshop}.
      </p>
      {["Made by", "Checked by", "Released by"].map((label) => (
        <p key={label} className="record-mark only-printed">
          <span>{label}</span> <u className="paper-blank" /> <span>Date</span> <u className="paper-blank" />
        </p>
      ))}
    </section>
  );
}

/** The labels that the batch was released with, as they were then. @rule BENCH-9 */
export function KeptLabels({ found: { batch } }: { readonly found: BatchOnPage }): ReactNode {
  if (stateOf(batch) !== "released") return null;
  return (
    <section className="record-labels" aria-labelledby="kept-labels">
      <h2 id="kept-labels">Label</h2>
      {batch.labels.length === 0 && (
        <p>
          {batch.as === null
            ? "No label was kept: it was started before the record kept labels."
            : "No label was set up when it was released."}
        </p>
      )}
      {batch.labels.map((kept) => (
        <Kept key={kept.label} kept={kept} />
      ))}
    </section>
  );
}

function Kept({ kept }: { readonly kept: KeptLabel }): ReactNode {
  const { size, market, parts } = kept;
  const layout = size && keptLayout(kept, size);
  return (
    <figure className="record-label">
      <figcaption>
        For {MARKET_IN_A_SENTENCE[market]}, as it was when the batch was released
        {size === null ? "; no label sheet was measured then" : `, ${size.width} × ${size.height} mm`}
      </figcaption>
      {size === null || layout === null || layout.left.length > 0 ? (
        <ul>
          {parts.map(({ called, text }) => (
            <li key={called}>{text}</li>
          ))}
        </ul>
      ) : (
        <LabelDrawing
          layout={layout}
          size={{ width: Number(size.width), height: Number(size.height) }}
          says={saidOnLabel(kept)}
        />
      )}
    </figure>
  );
}
