/** A process that opens the rich workshop in its store, as `npm run load` does beside a running server. */
import { openWorkshop } from "@/lib/operations/open-workshop";
import { richWorkshop } from "./store-workshop";

await openWorkshop(richWorkshop());
