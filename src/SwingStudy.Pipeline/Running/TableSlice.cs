namespace SwingStudy.Pipeline.Running;

/// <summary>An input of a stage.</summary>
/// <param name="Table">Name of the table.</param>
/// <param name="Slice">Which rows of it a unit of work sees.</param>
public sealed record TableSlice(string Table, Slice Slice);
