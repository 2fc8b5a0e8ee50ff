/** A build served by itself, at an address of its own, until it is cut off. */
import { preview } from 'vite';

export interface Served {
  /** Ends in a slash. */
  readonly address: string;
  /** Nothing is served from then on. */
  readonly cut: () => Promise<void>;
}

/** @param host a name or an address of this machine */
export async function serve(folder: string, host = 'localhost'): Promise<Served> {
  const server = await preview({ logLevel: 'warn', build: { outDir: folder }, preview: { port: 0, host } });
  const { port } = server.httpServer.address() as { port: number };
  return { address: `http://${host}:${port}/`, cut: () => server.close() };
}
