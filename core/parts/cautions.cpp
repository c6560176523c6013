// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/cautions.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QVariant>

#include "resources/resources.h"

namespace ohmwright {

namespace {

QJsonObject cautionData()
{
    registerResources();
    QFile file(QStringLiteral(":/ohmwright/cautions.json"));
    return file.open(QIODevice::ReadOnly) ? QJsonDocument::fromJson(file.readAll()).object()
                                          : QJsonObject();
}

QStringList strings(const QJsonValue &array)
{
    return array.toVariant().toStringList();
}

} // namespace

std::vector<CautionText> allCautions()
{
    std::vector<CautionText> cards;
    const QJsonArray array = cautionData().value(QLatin1String("cards")).toArray();
    for (const QJsonValue value : array) {
        const QJsonObject card = value.toObject();
        cards.push_back({card.value(QLatin1String("id")).toString(),
                         card.value(QLatin1String("title")).toString(),
                         card.value(QLatin1String("highVoltage")).toBool(),
                         strings(card.value(QLatin1String("lines")))});
    }
    return cards;
}

std::optional<CautionText> cautionById(const QString &id)
{
    for (CautionText &card : allCautions())
        if (card.id == id)
            return std::move(card);
    return std::nullopt;
}

QStringList acceptanceChecks()
{
    return strings(cautionData().value(QLatin1String("acceptance")));
}

} // namespace ohmwright
