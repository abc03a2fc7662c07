/** A process that opens its store, as the server does when it starts. */
import { openStore } from "@/lib/store/open-store";
import { storeFile } from "@/lib/store/store-file";

await openStore(storeFile());
