/** Changes whenever the same recording could weld different bits. */
export const ENGINE_VERSION = '0.4.0';
