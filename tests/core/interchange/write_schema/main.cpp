// SPDX-License-Identifier: GPL-3.0-or-later
// Writes the schema of the interchange to the file that is named: `ninja schema`.
#include "core/interchange/schema.h"

#include <QSaveFile>

#include <cstdlib>

int main(int argc, char **argv)
{
    if (argc != 2)
        return EXIT_FAILURE;
    QSaveFile file(QString::fromLocal8Bit(argv[1]));
    const QByteArray schema = ohmwright::schema();
    const bool done =
        file.open(QIODevice::WriteOnly) && file.write(schema) == schema.size() && file.commit();
    return done ? EXIT_SUCCESS : EXIT_FAILURE;
}
