/** Before any journey, so that no two of them build at once: the build is brought up to the sources. */
import { buildIsOld } from "@/lib/commands/build-age";
import { PROJECT, runScript } from "./server";

export default function bringBuildUpToDate(): void {
  if (buildIsOld(PROJECT)) runScript("build", [], process.env);
}
