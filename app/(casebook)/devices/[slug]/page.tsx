import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { boardLabel } from '../../../../shared/domain/casebook/board-label';
import type { Board } from '../../../../shared/schemas/device';
import { attempt } from '../../../_casebook/attempt';
import { Trouble } from '../../../_components/trouble';
import { serverCaller } from '../../../_trpc/server';

type PageProps = { params: Promise<{ slug: string }> };

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  const { slug } = await params;
  const { value: catalogue } = await attempt(() => serverCaller().casebook.getCatalogue());
  return { title: catalogue?.models.find((model) => model.slug === slug)?.name ?? 'No such device' };
}

export default async function DevicePage({ params }: PageProps) {
  const { slug } = await params;
  const { value, trouble } = await attempt(loadParts);
  if (trouble) return <Trouble kind={trouble} again={`/devices/${slug}`} />;
  const { catalogue, vocabulary } = value;
  const model = catalogue.models.find((entry) => entry.slug === slug);
  if (!model) notFound();
  const roles = new Map(vocabulary.roles.map((role) => [role.slug, role.label]));
  return (
    <>
      <h1>{model.name}</h1>
      <p className="lead">
        {model.summary} Made by {model.maker.name}.
      </p>
      {model.boards.map((board) => (
        <BoardParts key={board.slug} board={board} name={boardLabel(model, board)} roles={roles} />
      ))}
    </>
  );
}

async function loadParts() {
  const { casebook } = serverCaller();
  return { catalogue: await casebook.getCatalogue(), vocabulary: await casebook.listVocabulary() };
}

function BoardParts({ board, name, roles }: { board: Board; name: string; roles: Map<string, string> }) {
  return (
    <section className="section" id={board.slug} aria-labelledby={`${board.slug}-head`}>
      <h2 id={`${board.slug}-head`}>{name}</h2>
      <p className="section-sub">{board.summary}</p>
      <p className="onward">
        <Link href={`/?on=${board.slug}`} prefetch={false} className="press">
          Look up on this board
        </Link>
        <Link href={`/cases?on=${board.slug}`} prefetch={false}>
          Its cases
        </Link>
      </p>
      <table className="plain-table">
        <caption className="sr-only">Parts of {name}</caption>
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Role</th>
            <th scope="col">Standard number</th>
            <th scope="col">Package</th>
          </tr>
        </thead>
        <tbody>
          {board.parts.map((part) => (
            <tr key={part.designator}>
              <th scope="row" className="figure">
                {part.designator}
              </th>
              <td>{roles.get(part.role) ?? part.role}</td>
              <td className="figure">{part.partNumber ?? '–'}</td>
              <td>
                {part.package}, {part.pins} pins
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
