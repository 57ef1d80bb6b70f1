// A PostgreSQL server of the tests' own, on a loopback port, as tests/store/private_cluster.cpp has one: started when it is
// first asked for, stopped and removed when the tests end.
import { spawn, spawnSync } from "node:child_process";
import { chownSync, existsSync, mkdtempSync, openSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";

const kVersions = "/usr/lib/postgresql";

function newestPrograms() {
  const folders = (existsSync(kVersions) ? readdirSync(kVersions) : []).map((version) => join(kVersions, version, "bin"));
  const found = folders.filter((folder) => existsSync(join(folder, "initdb"))).sort().at(-1);
  if (!found) throw new Error(`no PostgreSQL server in ${kVersions}`);
  return found;
}

const freePort = () => new Promise((resolve) => {
  const server = createServer().listen(0, "127.0.0.1", () => {
    const { port } = server.address();
    server.close(() => resolve(port));
  });
});

export class PrivateCluster {
  databases = 0;

  static async started() {
    const cluster = new PrivateCluster();
    cluster.programs = newestPrograms();
    cluster.folder = mkdtempSync(join(tmpdir(), "lanework-cluster-"));
    cluster.port = await freePort();
    if (process.getuid() === 0) {
      const [, , uid, gid] = readFileSync("/etc/passwd", "utf8").split("\n").find((line) => line.startsWith("postgres:")).split(":");
      chownSync(cluster.folder, Number(uid), Number(gid));
      cluster.user = { uid: Number(uid), gid: Number(gid) };
    }
    cluster.run("initdb", "-D", `${cluster.folder}/data`, "-U", "lanework", "-A", "trust", "-E", "UTF8", "--locale=C");
    cluster.run("pg_ctl", ...cluster.startedWith(), "start");
    return cluster;
  }

  startedWith() {
    return ["-D", `${this.folder}/data`, "-l", `${this.folder}/log`, "-w", "-o", `-c listen_addresses=127.0.0.1 -c recovery_init_sync_method=syncfs -p ${this.port} -k ${this.folder}`];
  }

  // mode: fast (whoever is connected is sent away) or immediate (as after a crash). Whoever is at work here goes on meanwhile.
  async restart(mode) {
    const child = spawn(join(this.programs, "pg_ctl"), [...this.startedWith(), "-m", mode, "restart"], { cwd: "/", stdio: "ignore", ...this.user });
    const status = await new Promise((resolve) => child.on("exit", resolve));
    if (status !== 0) throw new Error(`pg_ctl restart -m ${mode}: ${status} ${readFileSync(`${this.folder}/log`, "utf8").slice(-2000)}`);
  }

  // Output goes to a file: a server that a pipe waits for would never let go of it.
  run(program, ...words) {
    const said = join(tmpdir(), `lanework-cluster-said-${process.pid}`);
    const out = openSync(said, "w");
    const done = spawnSync(join(this.programs, program), words, { cwd: "/", stdio: ["ignore", out, out], ...this.user });
    const text = readFileSync(said, "utf8");
    rmSync(said);
    if (done.status !== 0) throw new Error(`${program}: ${text}`);
  }

  newDatabase() {
    const name = `club${++this.databases}`;
    this.run("createdb", "-h", "127.0.0.1", "-p", String(this.port), "-U", "lanework", "-E", "UTF8", "-T", "template0", name);
    return `host=127.0.0.1 port=${this.port} user=lanework dbname=${name}`;
  }

  stop() {
    this.run("pg_ctl", "-D", `${this.folder}/data`, "-m", "immediate", "-w", "stop");
    rmSync(this.folder, { recursive: true, force: true });
  }
}
