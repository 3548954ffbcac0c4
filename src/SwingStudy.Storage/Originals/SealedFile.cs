using System.Buffers.Binary;
using System.Security.Cryptography;

namespace SwingStudy.Storage.Originals;

/// <summary>The form of an encrypted original.</summary>
/// <remarks>
/// Eight bytes that say what it is; length and SubjectPublicKeyInfo of a key pair made for this file alone (P-256); then blocks of
/// <see cref="BlockBytes"/>, the last one shorter or empty, each as tag and ciphertext of AES-256-GCM. The key is HKDF-SHA256 (RFC 5869) of the agreement
/// (ECDH) between the file's pair and the study's; it is used for one file, so that block number and a mark of the last block make the nonce: blocks that
/// are exchanged, dropped or cut off do not open.
/// </remarks>
internal static class SealedFile
{
    internal const int BlockBytes = 1 << 20;
    internal const int TagBytes = 16;
    private const int NonceBytes = 12;
    private const int KeyBytes = 32;

    internal static ReadOnlySpan<byte> Mark => "SWSEALD1"u8;

    /// <summary>Key of a file that is put away with the study's public key, and what has to stand before its blocks.</summary>
    internal static (byte[] Key, byte[] Head) New(byte[] publicKey)
    {
        using var own = ECDiffieHellman.Create(ECCurve.NamedCurves.nistP256);
        using var study = ECDiffieHellman.Create();
        study.ImportSubjectPublicKeyInfo(publicKey, out _);
        var ephemeral = own.ExportSubjectPublicKeyInfo();
        var head = new byte[Mark.Length + sizeof(ushort) + ephemeral.Length];
        Mark.CopyTo(head);
        BinaryPrimitives.WriteUInt16LittleEndian(head.AsSpan(Mark.Length), checked((ushort)ephemeral.Length));
        ephemeral.CopyTo(head, Mark.Length + sizeof(ushort));
        return (Key(own, study.PublicKey, ephemeral), head);
    }

    /// <summary>Writes what a sealed file holds.</summary>
    /// <returns>False where it was changed or another study's key put it away; what was written until then is no good.</returns>
    internal static bool TryOpen(Stream sealedFile, byte[] privateKey, Stream plain)
    {
        var start = new byte[Mark.Length + sizeof(ushort)];
        if (sealedFile.ReadAtLeast(start, start.Length, throwOnEndOfStream: false) < start.Length || !start.AsSpan(0, Mark.Length).SequenceEqual(Mark))
            return false;
        var ephemeral = new byte[BinaryPrimitives.ReadUInt16LittleEndian(start.AsSpan(Mark.Length))];
        if (sealedFile.ReadAtLeast(ephemeral, ephemeral.Length, throwOnEndOfStream: false) < ephemeral.Length)
            return false;
        try
        {
            using var study = ECDiffieHellman.Create();
            study.ImportPkcs8PrivateKey(privateKey, out _);
            using var own = ECDiffieHellman.Create();
            own.ImportSubjectPublicKeyInfo(ephemeral, out _);
            using var aes = new AesGcm(Key(study, own.PublicKey, ephemeral), TagBytes);
            return Blocks(sealedFile, aes, plain);
        }
        catch (CryptographicException)
        {
            return false;
        }
    }

    /// <summary>The nonce of a block.</summary>
    internal static void Nonce(Span<byte> nonce, long block, bool isLast)
    {
        nonce.Clear();
        BinaryPrimitives.WriteInt64BigEndian(nonce, block);
        nonce[^1] = isLast ? (byte)1 : (byte)0;
    }

    private static bool Blocks(Stream sealedFile, AesGcm aes, Stream plain)
    {
        var (block, clear) = (new byte[TagBytes + BlockBytes], new byte[BlockBytes]);
        Span<byte> nonce = stackalloc byte[NonceBytes];
        for (long number = 0; ; number++)
        {
            var count = sealedFile.ReadAtLeast(block, block.Length, throwOnEndOfStream: false);
            if (count < TagBytes)
                return false;
            var isLast = count < block.Length;
            Nonce(nonce, number, isLast);
            var opened = clear.AsSpan(0, count - TagBytes);
            aes.Decrypt(nonce, block.AsSpan(TagBytes, opened.Length), block.AsSpan(0, TagBytes), opened);
            plain.Write(opened);
            if (isLast)
                return true;
        }
    }

    private static byte[] Key(ECDiffieHellman own, ECDiffieHellmanPublicKey other, byte[] ephemeral) =>
        HKDF.DeriveKey(HashAlgorithmName.SHA256, own.DeriveRawSecretAgreement(other), KeyBytes, ephemeral, "swingstudy original"u8.ToArray());
}
