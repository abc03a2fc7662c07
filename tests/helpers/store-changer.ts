/** A process that adds one run after another to the books of its store, so many or until it is killed, telling each. */
import { changeBooks } from "@/lib/store/change-books";
import { planned } from "./store-planned";

const [name = "", times = "Infinity"] = process.argv.slice(2);
for (let count = 0; count < Number(times); count += 1) {
  const id = `${name}${String(count)}`;
  await changeBooks(planned(id));
  process.stdout.write(`${id}\n`);
}
