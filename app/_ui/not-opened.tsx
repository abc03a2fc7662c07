import type { ReactNode } from "react";
import { counted } from "@/lib/edge/counted";
import { faultsCounted, faultsGathered } from "@/lib/edge/faults-gathered";

/** Why a file was not opened: how much is wrong, then each fault with where it stands and what would be right. */
export const NotOpened = ({
  faults,
  called,
  again,
}: {
  readonly faults: readonly string[];
  /** The name of the file, where it is known. */
  readonly called?: string | undefined;
  /** What is to be done once the faults are mended, as `open the file again`. */
  readonly again: string;
}): ReactNode => (
  <section className="fault wide" role="alert">
    <h2>
      Not opened: {counted(faultsCounted(faults), "fault", "faults")}
      {called !== undefined && called !== "" && <> in {called}</>}
    </h2>
    <p>Nothing has changed. Mend what is listed and {again}.</p>
    <ul className="fault-list">
      {faultsGathered(faults).map((fault, at) => (
        <li key={at}>{fault}</li>
      ))}
    </ul>
  </section>
);
