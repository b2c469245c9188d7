/** The plain alert triangle; the mark is a hole, so that it shows in every forced colour scheme. */
export function Alert() {
  return (
    <svg class="alert" width="22" height="20" viewBox="0 0 24 22" aria-hidden="true">
      <path fill="currentColor" fill-rule="evenodd" d="M12 0 24 22H0zM10.8 8v7h2.4V8zm0 9v2.4h2.4V17z" />
    </svg>
  );
}
