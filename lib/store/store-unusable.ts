/** Why a store cannot be opened, read or written, in a sentence for the person at the screen. */
export class StoreUnusable extends Error {
  override readonly name = "StoreUnusable";
}
