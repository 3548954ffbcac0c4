using SwingStudy.Domain.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>One capture that is in the study already.</summary>
/// <param name="Id">Its identifier.</param>
/// <param name="Original">The file it came from.</param>
/// <param name="Rows">The rows in which it stands.</param>
/// <param name="Row">Its position there.</param>
internal sealed record EarlierCapture(string Id, string Original, RowSet Rows, int Row);
