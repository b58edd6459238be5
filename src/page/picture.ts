/** A drawn picture, whole as it stands in a page or in a file of its own. */
export interface Picture {
  /** Unique, in kebab case; what it shows comes first: `band-hall`. */
  readonly name: string;
  readonly title: string;
  /** The figures in words. */
  readonly description: string;
  /** An `svg` element, its texts harmless. */
  readonly svg: string;
}
