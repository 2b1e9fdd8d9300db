import { serverCaller } from '../../_trpc/server';
import { ROLE_WORDS } from './role-words';

/** In the demo alone: an account for each role, to try it with. */
export async function DemoAccounts() {
  const accounts = await serverCaller().account.demoAccounts();
  if (accounts.length === 0) return null;
  return (
    <section className="section" aria-labelledby="demo-head">
      <h2 id="demo-head">Accounts of the demo</h2>
      <p className="section-sub">This is the demo: everybody may sign in with these. They exist nowhere else.</p>
      <ul className="demo-accounts">
        {accounts.map(({ name, password, role }) => (
          <li key={name}>
            <strong>{role}</strong> ({ROLE_WORDS[role]}): name <span className="figure">{name}</span>, password{' '}
            <span className="figure">{password}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
