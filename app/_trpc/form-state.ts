/** How a form stands: what is wrong with which field, what is wrong with all of it, and what was typed. */
export type FormState = {
  fields: Record<string, string>;
  /** Said above the form where no field is at fault; null where there is nothing to say. */
  told: string | null;
  /** What the fields held, but for passwords. */
  typed: Record<string, string>;
  /** Whether it was done. */
  done: boolean;
};

export const UNTOUCHED: FormState = { fields: {}, told: null, typed: {}, done: false };
