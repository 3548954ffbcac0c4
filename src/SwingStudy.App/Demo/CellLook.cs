namespace SwingStudy.App.Demo;

/// <summary>How a cell of the coach's workbook is shown.</summary>
internal enum CellLook
{
    /// <summary>As it is.</summary>
    Plain,

    /// <summary>A serial day shown as a date.</summary>
    Date,

    /// <summary>A share of a day shown as a time.</summary>
    Time,
}
