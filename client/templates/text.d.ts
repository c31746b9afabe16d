/** The bundler puts the text of these files in. */
declare module "*.airframe" {
  const text: string;
  export default text;
}
