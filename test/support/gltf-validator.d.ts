/** The part of gltf-validator that the tests use; it comes without types. */
declare module 'gltf-validator' {
  export type Report = {
    readonly issues: {
      readonly numErrors: number;
      readonly numWarnings: number;
      readonly messages: readonly {
        readonly code: string;
        readonly message: string;
        readonly severity: number;
        readonly pointer?: string;
      }[];
    };
  };
  export function validateBytes(data: Uint8Array, options?: { readonly maxIssues?: number }): Promise<Report>;
}
