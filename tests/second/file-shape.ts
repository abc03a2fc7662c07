/** The shape of a workshop file as parsed JSON, with what may be left out; the second implementation reads it as it stands. */

type Maybe<T> = T | null | undefined;

export interface WorkshopFile {
  readonly format: "stillroom-workshop";
  readonly version: 1 | 4;
  readonly workshop: {
    readonly name: string;
    readonly currency: string;
    readonly today?: Maybe<string>;
    readonly horizonDays?: Maybe<number>;
    readonly coverDays?: Maybe<number>;
    readonly labourPerHour: string;
    readonly overheadPerHour: string;
    readonly balanceStep: string;
    readonly closedDays?: Maybe<readonly string[]>;
    readonly taxPercent?: Maybe<string>;
    readonly paymentFeePercent?: Maybe<string>;
    readonly paymentFeeFixed?: Maybe<string>;
  };
  readonly suppliers: readonly FileSupplier[];
  readonly materials: readonly FileMaterial[];
  readonly offers: readonly FileOffer[];
  readonly lots: readonly FileLot[];
  readonly orders: readonly FileOrder[];
  readonly formulas: readonly FileFormula[];
  readonly products: readonly FileProduct[];
  readonly runs: readonly FileRun[];
  readonly finished: readonly FileFinished[];
  readonly sales: readonly FileSale[];
}

export interface FileSupplier {
  readonly id: string;
  readonly name: string;
  readonly leadDays: number;
  readonly leadCounts: "working" | "calendar";
  readonly closedDays?: Maybe<readonly string[]>;
  readonly shipping?: Maybe<string>;
  readonly shippingFreeFrom?: Maybe<string>;
  readonly minimumOrder?: Maybe<string>;
}

export interface FileMaterial {
  readonly id: string;
  readonly name: string;
  readonly kind: "ingredient" | "packaging" | "consumable";
  readonly measure: "mass" | "count";
  readonly density?: Maybe<string>;
  readonly safetyStock?: Maybe<string>;
  readonly safetyDays?: Maybe<number>;
  readonly useMin?: Maybe<string>;
  readonly useMax?: Maybe<string>;
  readonly addBelow?: Maybe<string>;
}

export interface FileOffer {
  readonly id: string;
  readonly material: string;
  readonly supplier: string;
  readonly pack: string;
  readonly price: string;
  readonly breaks?: Maybe<readonly { readonly packs: number; readonly price: string }[]>;
  readonly minPacks?: Maybe<number>;
  readonly preferred?: Maybe<boolean>;
}

export interface FileLot {
  readonly id: string;
  readonly material: string;
  readonly received: string;
  readonly expires?: Maybe<string>;
  readonly remaining: string;
  readonly value: string;
}

export interface FileOrder {
  readonly id: string;
  readonly supplier: string;
  readonly placed: string;
  readonly due: string;
  readonly lines: readonly {
    readonly material: string;
    readonly quantity: string;
    readonly cost: string;
    readonly expires?: Maybe<string>;
  }[];
}

export type FileFormulaLine = (
  | { readonly material: string; readonly formula?: undefined }
  | { readonly formula: string; readonly material?: undefined }
) & { readonly percent: string; readonly phase?: Maybe<string> };

export interface FileFormula {
  readonly id: string;
  readonly name: string;
  readonly density?: Maybe<string>;
  readonly lines: readonly FileFormulaLine[];
}

export interface FileProduct {
  readonly id: string;
  readonly name: string;
  readonly formula: string;
  readonly fill: string;
  readonly overfill?: Maybe<string>;
  readonly processLoss?: Maybe<string>;
  readonly heel?: Maybe<string>;
  readonly usualRun: number;
  readonly packaging?: Maybe<
    readonly { readonly material: string; readonly amount: string; readonly spoilage?: Maybe<string> }[]
  >;
  readonly perRun?: Maybe<readonly { readonly material: string; readonly amount: string }[]>;
  readonly labourMinutesPerRun?: Maybe<string>;
  readonly labourMinutesPerUnit?: Maybe<string>;
  readonly priceToShops?: Maybe<string>;
  readonly priceToCustomers?: Maybe<string>;
  readonly madeInto?: Maybe<string>;
}

export interface FileRun {
  readonly id: string;
  readonly product: string;
  readonly date: string;
  readonly sequence?: Maybe<number>;
  readonly units: number;
}

export interface FileFinished {
  readonly id: string;
  readonly product: string;
  readonly made: string;
  readonly bestBefore?: Maybe<string>;
  readonly units: number;
}

export interface FileSale {
  readonly product: string;
  readonly date: string;
  readonly units: number;
}
