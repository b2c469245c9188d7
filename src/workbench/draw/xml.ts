const entities: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** Text as it may stand in XML, between tags or in a quoted attribute. */
export function escapeXml(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => entities[sign] ?? sign);
}

/** One XML element; its children are XML already and go on lines of their own. */
export function element(
  name: string,
  attributes: Record<string, string | number>,
  children: string[] = [],
): string {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${escapeXml(String(value))}"`);
  const open = `<${name}${written.join("")}`;
  if (!children.length) return `${open}/>`;
  const inner = children.join("\n").replace(/^/gm, "  ");
  return `${open}>\n${inner}\n</${name}>`;
}
