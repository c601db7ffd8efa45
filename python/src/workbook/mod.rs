//! Wrappers of `foilwork::workbook`.

mod made;

crate::room::room! {
    /// Workbooks for spreadsheets, as bytes: live formulas, inputs that are checked, texts that are never formulas.
    workbook {
        made { dilution_workbook, list_in_workbook, plan_workbook, recipe_workbook, services_workbook, worksheet_workbook }
    }
}
