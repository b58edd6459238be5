/**
 * The part of csv-parse/sync that the core uses, without the Node types that its own declarations
 * bring along: the core must compile where neither Node nor a browser is known.
 */
export interface CsvParseOptions {
  readonly bom?: boolean;
  readonly delimiter?: string | readonly string[];
  readonly record_delimiter?: string | readonly string[];
  readonly quote?: string | boolean | null;
  readonly escape?: string | null;
  readonly columns?: boolean;
  readonly from_line?: number;
  readonly info?: boolean;
  readonly raw?: boolean;
  readonly trim?: boolean;
  readonly ltrim?: boolean;
  readonly rtrim?: boolean;
  readonly max_record_size?: number;
  readonly relax_column_count?: boolean;
  readonly relax_quotes?: boolean;
  readonly skip_empty_lines?: boolean;
}

/** @returns one array of cells a record */
export function parse(input: string | Uint8Array, options?: CsvParseOptions): string[][];
