// What web/kinds.mjs makes of the folders of the kinds when the page is built.

declare module "@kinds/kind" {
  export const parts: Readonly<Record<import("../live/contract").Plan["kind"], import("./kind").Kind>>;
}

declare module "@kinds/details" {
  export const parts: Readonly<Record<import("../live/contract").Plan["kind"], import("./details").Details>>;
}

declare module "@kinds/sheet" {
  export const parts: Readonly<Record<import("../live/contract").Plan["kind"], import("./sheet").Sheet>>;
}

declare module "@kinds/form" {
  export const parts: Readonly<Record<import("../live/contract").Plan["kind"], import("./form").PlanForm>>;
}

declare module "@kinds/seeing" {
  export const parts: Readonly<Record<import("../live/contract").Plan["kind"], import("preact").ComponentType<import("./seeing").SeeingProps>>>;
}

declare module "@kinds/answer" {
  export const parts: Readonly<Record<import("../live/contract").Plan["kind"], import("./answer").Answering>>;
}
