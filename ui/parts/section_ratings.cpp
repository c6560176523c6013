// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts/part_sections.h"
#include "ui/parts/ratings_editor.h"

#include <QVBoxLayout>

namespace ohmwright::ui {

RatingsSection::RatingsSection(const DetailGround &given)
    : DetailSection(given, tr("Ratings")), m_editor(new RatingsEditor(book(), theme()))
{
    column().addWidget(m_editor);
    connect(m_editor, &RatingsEditor::said, this, &RatingsSection::said);
}

void RatingsSection::fill(const Part &part, bool)
{
    m_editor->showPart(part.id);
}

} // namespace ohmwright::ui
