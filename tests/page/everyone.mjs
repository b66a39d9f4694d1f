export async function everyone() {}
