using SwingStudy.Domain.Problems;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>Divides the rows of a file into runs of samples, row by row.</summary>
internal interface IRunDivision
{
    /// <summary>Why the file is held.</summary>
    Problem? Problem { get; }

    /// <summary>Rows that belong to no run; complete after <see cref="End"/>.</summary>
    long Unused { get; }

    /// <summary>Whether recordings share the lines of the file, since they stand side by side.</summary>
    bool IsShared { get; }

    /// <summary>Takes a row; gives the runs that are complete by it.</summary>
    SampleRun[] Take(RawBlock block, int row);

    /// <summary>The runs that are complete by the end of the file.</summary>
    SampleRun[] End();
}
