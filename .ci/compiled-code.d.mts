export function compiledCode(dist: string): Promise<boolean>;
