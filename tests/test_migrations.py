"""Tables and migrations say the same."""

from alembic import command
from alembic.script import ScriptDirectory

from webapp.storage import migrating, upgrade


def test_the_migrations_give_the_tables_of_the_program(database):
    configuration = migrating.configuration()
    with database.connections.connect() as connection:
        configuration.attributes["connection"] = connection
        command.check(configuration)


def test_the_newest_migration_is_told_by_the_names_of_the_files():
    assert upgrade.newest_revision() == ScriptDirectory.from_config(migrating.configuration()).get_current_head()
