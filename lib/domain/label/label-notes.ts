/** What is done at most benches and asked by no law; no source. @rule LABEL-8 */
import type { LabelDraft } from "./label-draft";

export function labelNotes(draft: LabelDraft): readonly string[] {
  const { ph, made, batchCode, use, net, ingredients } = draft;
  return [
    ...(ph === null ? ["Most makers put the pH on the label, or keep it with the batch."] : []),
    ...(made === null ? ["Most makers put the day on which it was made on the label."] : []),
    ...(batchCode === null ? ["A label without a batch code cannot be called back."] : []),
    ...(use === "rinse-off" ? ["What is used in the shower does not go into glass."] : []),
    ...(net.by === "volume" ? ["A thin product goes into a bottle with a pump."] : []),
    ...(ingredients.notNamed.length > 0
      ? ["Most makers keep a list of every allergen, also of those that are too little to be named."]
      : []),
  ];
}
