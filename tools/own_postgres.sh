# Sourced by run: a PostgreSQL of the demo's own, which nobody reaches but through a socket in a folder that only its owner
# enters. It is started when the demo is, and stopped with it; what it holds stays.

# own_postgres FOLDER NAME: sets 'connection', to the database of that name. Run as root it belongs to the user that Debian's
# package makes, and lies there.
own_postgres() {
  install_packages postgresql
  local programs folder=$1 name=$2 log
  programs=$(find /usr/lib/postgresql -mindepth 2 -maxdepth 2 -name bin | sort -V | tail -1)
  [ -n "$programs" ] || stop 'there is no PostgreSQL server in /usr/lib/postgresql'
  as_owner=()
  if [ "$(id -u)" -eq 0 ]; then
    as_owner=(setpriv --reuid=postgres --regid=postgres --clear-groups --)
    folder=/var/lib/postgresql/lanework-demo
  fi
  log=$folder/log
  pg_ctl=("${as_owner[@]}" "$programs/pg_ctl" -D "$folder" -s -w)
  cd / # the owner may not be allowed where we are
  if [ ! -e "$folder/PG_VERSION" ]; then
    say "making a database in $folder"
    "${as_owner[@]}" "$programs/initdb" -D "$folder" -U lanework --auth-local=trust --auth-host=reject -E UTF8 --locale=C \
      --data-checksums >/dev/null || stop "no database can be made in $folder"
  fi
  if ! "${pg_ctl[@]}" status >/dev/null 2>&1; then
    "${pg_ctl[@]}" -l "$log" -o "-c listen_addresses='' -k $folder" start || stop "the database does not start, see $log"
    trap '(cd / && "${pg_ctl[@]}" -m fast stop) || true' EXIT
  fi
  local asks=("${as_owner[@]}" "$programs/psql" -h "$folder" -U lanework -d postgres -qAtc)
  if [ -z "$("${asks[@]}" "SELECT 1 FROM pg_database WHERE datname = '$name'")" ]; then
    "${asks[@]}" "CREATE DATABASE $name" || stop "no database $name can be made, see $log"
  fi
  connection="host=$folder user=lanework dbname=$name"
  cd "$project"
}
