/** What is accepted of an archive before a byte of it is inflated. */
export interface ZipLimits {
  readonly archiveBytes: number;
  readonly entries: number;
  readonly entryBytes: number;
  /** Of all entries together, inflated. */
  readonly totalBytes: number;
  /** Inflated to packed bytes of an entry larger than `smallBytes`. A hole's file comes to about 10. */
  readonly ratio: number;
  readonly smallBytes: number;
}

const MEGABYTE = 1024 * 1024;

export const ZIP_LIMITS: ZipLimits = {
  archiveBytes: 32 * MEGABYTE,
  entries: 5000,
  entryBytes: 64 * MEGABYTE,
  totalBytes: 256 * MEGABYTE,
  ratio: 200,
  smallBytes: 64 * 1024,
};
