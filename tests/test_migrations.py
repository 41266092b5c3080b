"""Tables and migrations say the same."""

from alembic import command

from webapp.storage import upgrade


def test_the_migrations_give_the_tables_of_the_program(database):
    configuration = upgrade.configuration()
    with database.connections.connect() as connection:
        configuration.attributes["connection"] = connection
        command.check(configuration)
