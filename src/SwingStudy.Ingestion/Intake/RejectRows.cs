using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Tables;
using SwingStudy.Ingestion.Mapping.Rows;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Makes rows of the rejects table. Raw rows hold names: those stand there as codes.</summary>
internal static class RejectRows
{
    /// <summary>The rejects of one file, in file order.</summary>
    public static RowSet Build(IReadOnlyList<MappedReject> rejects, bool takesCaptures, Sha256 original, NameMask mask)
    {
        var (hash, count) = (original.ToString(), rejects.Count);
        var lines = new long?[count];
        var (originals, raws, reasons, details, extents) = (new string?[count], new string?[count], new string?[count], new string?[count], new string?[count]);
        var (columns, variables, ids) = (new string?[count], new string?[count], new string?[count]);
        for (var i = 0; i < count; i++)
        {
            var reject = rejects[i];
            originals[i] = hash;
            lines[i] = reject.Line;
            raws[i] = mask.Of(reject.Raw);
            reasons[i] = reject.Reason;
            details[i] = reject.Expected;
            extents[i] = reject.IsRow ? "row" : "cell";
            columns[i] = reject.Column;
            variables[i] = reject.Variable;
            ids[i] = reject.IsRow || !takesCaptures ? null : new CaptureId(original, reject.RowLine ?? reject.Line).ToString();
        }

        return new RowSet(StudyTables.Rejects,
        [
            new TextColumn(originals), new IntegerColumn(lines), new TextColumn(raws), new TextColumn(reasons), new TextColumn(details),
            new TextColumn(extents), new TextColumn(columns), new TextColumn(variables), new TextColumn(ids),
        ]);
    }
}
