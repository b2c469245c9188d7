declare module "*.yaml" {
  const table: Record<string, string>;
  export default table;
}
