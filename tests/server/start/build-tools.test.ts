import { describe, expect, it } from 'vitest';
import { buildToolsSentence, isDebian, missingBuildTools, type System } from '../../../server/start/build-tools.mjs';

const system = (platform: NodeJS.Platform, distribution = '', programs: string[] = []): System => ({
  platform,
  distribution,
  has: (name) => programs.includes(name),
});

describe('missingBuildTools', () => {
  it('names each of the three that is not there', () => {
    expect(missingBuildTools(system('linux', 'debian'))).toEqual(['python3', 'make', 'a C++ compiler']);
    expect(missingBuildTools(system('linux', 'debian', ['make', 'g++']))).toEqual(['python3']);
  });

  it('is content with any C++ compiler', () => {
    expect(missingBuildTools(system('linux', 'fedora', ['python3', 'make', 'clang++']))).toEqual([]);
  });

  it('asks a Mac whether its tools are installed, because the commands exist either way', () => {
    const mac = system('darwin', '', ['python3', 'make', 'g++']);
    expect(missingBuildTools(mac, () => false)).toEqual(['the command line tools']);
    expect(missingBuildTools(mac, () => true)).toEqual([]);
  });
});

describe('buildToolsSentence', () => {
  it.each([
    [system('linux', 'debian'), 'sudo apt-get install -y python3 make g++'],
    [system('linux', 'ubuntu debian'), 'sudo apt-get install -y python3 make g++'],
    [system('linux', 'fedora'), 'sudo dnf install -y python3 make gcc-c++'],
    [system('darwin'), 'xcode-select --install'],
    [system('win32'), 'Visual Studio Build Tools'],
    [system('linux', 'arch'), "your system's package manager"],
  ])('tells %o what to do', (found, remedy) => {
    const sentence = buildToolsSentence(found, ['python3', 'make']);
    expect(sentence).toContain('python3 and make are missing');
    expect(sentence).toContain(remedy);
    expect(sentence.match(/\.(\s|$)/g)).toHaveLength(1);
  });
});

describe('isDebian', () => {
  it('knows the kin by ID_LIKE', () => {
    expect(isDebian(system('linux', 'ubuntu debian'))).toBe(true);
    expect(isDebian(system('linux', 'fedora'))).toBe(false);
    expect(isDebian(system('darwin', ''))).toBe(false);
  });
});
