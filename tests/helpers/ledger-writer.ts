/**
 * A process that posts at random into its store until it is killed, several clients at a time, and tells the key of
 * each posting once it is acknowledged: `node … ledger-writer.ts NAME SEED CLIENTS [POSTINGS]`.
 */
import { ledgerSoak } from "./ledger-soak";
import { diceFrom } from "./random-dice";

const [name = "", seed = "1", clients = "1", most = "Infinity"] = process.argv.slice(2);

async function client(number: number): Promise<void> {
  const soak = ledgerSoak(diceFrom(Number(seed) * 100 + number), `${name}.${String(number)}`);
  let told = 0;
  while (told < Number(most)) {
    await soak.step();
    for (const key of soak.acknowledged().slice(told)) process.stdout.write(`${key}\n`);
    told = soak.posted();
  }
}

await Promise.all(Array.from({ length: Number(clients) }, (_, number) => client(number)));
