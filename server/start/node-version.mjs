// Read by whatever Node there is: nothing in this file may need a newer one than the message that it prints.

/** The oldest Node that the project runs on. */
export const oldestNode = { major: 20, minor: 19 };

/**
 * What to tell somebody whose Node is too old, or null when it is new enough.
 * @param {string} version as in process.versions.node
 * @returns {string | null}
 */
export function nodeFault(version) {
  const major = Number(version.split('.')[0]);
  const minor = Number(version.split('.')[1]);
  const newEnough = major > oldestNode.major || (major === oldestNode.major && minor >= oldestNode.minor);
  if (newEnough) return null;
  return (
    'This needs Node ' + oldestNode.major + '.' + oldestNode.minor + ' or later, and this is Node ' + version + ': install a newer one from https://nodejs.org.'
  );
}

/**
 * Loads a script only after the version check, because its syntax may be beyond an old Node's.
 * @param {() => Promise<unknown>} load
 * @returns {void}
 */
export function onNewEnoughNode(load) {
  const fault = nodeFault(process.versions.node);
  if (fault === null) {
    load().catch((error) => {
      console.error(error);
      process.exit(1);
    });
    return;
  }
  console.error(fault);
  process.exit(1);
}
