/**
 * A protocol as it lies on disk, read whole into memory by whoever has a disk: paths relative to the
 * protocol's own folder, with `/` between parts, to their text. Only `protocol.yaml`, `norms/*.csv`,
 * `words/*.yaml` and `figures/*.svg` mean anything.
 */
export interface ProtocolFolder {
  /** What to put before a file's path in a diagnostic, such as the path given on the command line. */
  readonly label: string
  readonly files: ReadonlyMap<string, string>
}
