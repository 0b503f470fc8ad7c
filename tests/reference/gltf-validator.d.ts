declare module 'gltf-validator' {
  export function validateBytes(bytes: Uint8Array): Promise<{
    readonly issues: {
      readonly numErrors: number;
      readonly numWarnings: number;
      /** Severity: 0 error, 1 warning, 2 information, 3 hint. */
      readonly messages: readonly { readonly code: string; readonly severity: number; readonly message: string }[];
    };
    readonly info: { readonly animationCount: number };
  }>;
}
